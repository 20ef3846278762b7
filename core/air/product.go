package air

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/words"
)

// Binder is what a product is thinned with or hardens by. The zero value is not
// known.
type Binder string

// The three binders.
const (
	Water     Binder = "water"
	Solvent   Binder = "solvent"
	DryingOil Binder = "drying-oil"
)

// Product is the paint, glaze, varnish or size of one step.
type Product struct {
	At       string       // pointer to the step in the plan, "/finish/steps/2"
	StepName string       // as the plan names it, used in the words of notes
	Litres   measure.Fact // used up in all coats, loss and thinner included
	VOC      measure.Fact // grams of solvent a litre, as it is in the can
	Binder   Binder
	Coats    int64        // less than 1 counts as one coat
	DryHours measure.Fact // hours one coat takes to dry
	Limit    measure.Fact // the product's own highest eight-hour average, mg/m³; not known: the job's

	FlashPoint measure.Fact // degrees Celsius
	Sprayed    bool
	Size       bool     // it is laid to hold leaf
	Category   Category // what it counts as where VOC is limited
	// Label is the VOC as the label has it, grams a litre. LessWater tells that it
	// leaves water and exempt solvents out; Water and Exempt are these as shares of
	// the volume, Thinner what is added as a share of the product's. VOC above is
	// what a litre holds as it is put on (AsUsed); Unsplit tells that it was taken
	// from a label less water of which nobody has said how much is water, and is
	// then too high.
	Label              measure.Fact
	LessWater, Unsplit bool
	InPounds           bool // the label was read in pounds a US gallon
	Water              measure.Fact
	Exempt, Thinner    measure.Number
}

// Plan is how the room is aired. The limit is the highest eight-hour average
// that the product's data sheet or the country allows, in milligrams a cubic
// metre. Opened and Shut are changes of the whole air of the room in an hour,
// with the windows so. Mixing says how badly the fresh air reaches every
// corner: 1 is perfect, 10 very poor.
//
// ShortTerm is the highest average over fifteen minutes, milligrams a cubic
// metre. Fan is what a fan brings besides, in cubic metres an hour, while people
// work. Nights says whether the windows stay open when nobody is at work.
type Plan struct {
	Limit, ShortTerm measure.Fact
	Opened, Shut     measure.Fact
	Mixing           measure.Fact
	Fan              measure.Fact
	Nights           Nights
}

// Nights says whether the windows stay open when nobody is at work. The zero
// value counts as shut, which is the less safe.
type Nights string

// The two ways to leave the windows.
const (
	NightsShut Nights = "shut"
	NightsOpen Nights = "open"
)

// Category is what a coating counts as where its VOC is limited by law. The zero
// value is not said.
type Category string

// The categories, in words that the laws of all countries here can be read with.
const (
	MattCeiling      Category = "matt-ceiling"
	GlossCeiling     Category = "gloss-ceiling"
	TrimPaint        Category = "trim-paint"
	TrimVarnish      Category = "trim-varnish"
	SealingPrimer    Category = "sealing-primer"
	BindingPrimer    Category = "binding-primer"
	OnePack          Category = "one-pack"
	TwoPack          Category = "two-pack"
	MultiColoured    Category = "multi-coloured"
	DecorativeEffect Category = "decorative-effect"
	MetallicPaint    Category = "metallic"
	Lacquer          Category = "lacquer"
	ClearShellac     Category = "clear-shellac"
	OpaqueShellac    Category = "opaque-shellac"
	Adhesive         Category = "adhesive"
)

// Categories are all categories.
func Categories() []Category {
	return []Category{MattCeiling, GlossCeiling, TrimPaint, TrimVarnish, SealingPrimer, BindingPrimer, OnePack, TwoPack,
		MultiColoured, DecorativeEffect, MetallicPaint, Lacquer, ClearShellac, OpaqueShellac, Adhesive}
}

// Job is what the air of a room is worked out from: the room, how it is aired, what
// gives off solvent into it, when that goes on and when people are there. Coats and
// Shifts are none where not known.
type Job struct {
	RoomVolume measure.Volume
	Air        Plan
	Products   []Product
	Coats      []Coat
	Shifts     []Shift
}

// That are those of the products of which the test holds.
func That(test func(Product) bool, products []Product) []Product {
	var found []Product
	for _, product := range products {
		if test(product) {
			found = append(found, product)
		}
	}
	return found
}

// Names are the names of the steps.
func Names(products []Product) words.Value {
	list := make([]string, len(products))
	for i, product := range products {
		list[i] = Named(product)
		if product.StepName != "" {
			list[i] = "“" + list[i] + "”"
		}
	}
	return words.Names("", list).Value
}

var (
	solventPerLitre = measure.NumberFromInt(150) // g/L, above: treated as a solvent product
	burnsBelow      = measure.NumberFromInt(60)  // °C, 140 °F: a flash point below makes a product one that may burn
)

// IsSolvent: thinned with solvent, or holding more than 150 g/L of it, or
// nothing is known that speaks against it. The 150 g/L is derived: no
// water-borne interior paint is allowed as much (Directive 2004/42/EC, annex II,
// but for decorative effects).
func IsSolvent(product Product) bool {
	if product.Binder == Solvent {
		return true
	}
	if product.VOC.Known {
		return product.VOC.Value.Cmp(solventPerLitre) > 0
	}
	return product.Binder != Water
}

// MayBurn: its flash point is below 60 °C; where that is not known, it is a
// solvent product.
func MayBurn(product Product) bool {
	if product.FlashPoint.Known {
		return product.FlashPoint.Value.Cmp(burnsBelow) < 0
	}
	return IsSolvent(product)
}
