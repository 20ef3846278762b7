package finish

// Start is what a new step of a kind begins with, written as the plan writes
// it, until the label of the product is at hand: the label decides. Blanks
// that the kind has no use for are empty. SpreadUS is in ft²/gal and
// SpreadMetric in m²/L, the same rate in round figures. From says where the
// values come from.
type Start struct {
	Kind                   Kind
	Basis                  Basis
	Coats                  string
	SpreadUS, SpreadMetric string
	Loss                   string
	Binder                 string
	DryHours               string
	OpenHours              string
	From                   string
}

const (
	practice  = "common practice, no source; the label decides"
	loss      = "12"
	lossFrom  = "; loss of brush or roller 10 to 15 % as painters' tables have it"
	waterBase = "water"
)

// Starting is what a new step of kind k begins with. ok is false for a word
// that is no kind.
//
// Loss is between the 10 and 15 % that a trade table gives for brush and
// roller; hours of drying are the recoat times that painters' tables give
// for latex, 2 to 4; the spreads of clear coats start
// from varnish on wood, 400 ft²/gal (Treatise on Architecture and Building
// Construction vol. 4 §59: 350 to 450 the first coat, 450 to 550 the later).
// Everything else is common practice, no source.
func Starting(k Kind) (start Start, ok bool) {
	paint := Start{Kind: k, Loss: loss, Binder: waterBase, DryHours: "4", From: practice + lossFrom}
	switch k {
	case Protect:
		// The floor under all of the ceiling, before any layer is up.
		return Start{Kind: k, Basis: Surface, From: practice}, true
	case Peel:
		return Start{Kind: k, Basis: Mask, From: practice}, true
	case LeafLaying:
		return Start{Kind: k, Basis: Openings, From: practice}, true
	case Base:
		return paint.over(Surface, "2", "375", "9.2"), true
	case EdgeSeal:
		return paint.over(Edges, "1", "450", "11"), true
	case Coat:
		// The roller covers the vinyl as well as the openings.
		return paint.over(Mask, "2", "375", "9.2"), true
	case ClearSeal:
		return paint.over(Mask, "1", "400", "9.8"), true
	case Underpaint:
		return paint.over(Openings, "1", "350", "8.6"), true
	case SizeCoat:
		size := paint.over(Openings, "1", "490", "12")
		size.Loss, size.DryHours, size.OpenHours = "10", "0.25", "24"
		size.From = practice + "; loss, hours to tack and open hours are those of a water size"
		return size, true
	case Glaze:
		return paint.over(Mask, "1", "450", "11"), true
	case ClearCoat:
		varnish := paint.over(Surface, "2", "400", "9.8")
		varnish.From = "Treatise on Architecture and Building Construction vol. 4 §59, first coat of varnish on wood; the label decides"
		return varnish, true
	}
	return Start{}, false
}

func (s Start) over(basis Basis, coats, us, metric string) Start {
	s.Basis, s.Coats, s.SpreadUS, s.SpreadMetric = basis, coats, us, metric
	return s
}

// LeafStart is what a new leaf step begins with for a metal. Sizes and laps are
// in inches and, for metric plans, in millimetres: the sizes sold on either
// side, not one converted. Cover and waste are in per cent.
type LeafStart struct {
	Metal                 Metal
	Side, Lap             string
	SideMetric, LapMetric string
	Cover, Waste          string
	PerBook, BooksPerPack string
	From                  string
}

// StartingLeaf is what a new leaf step begins with for metal m. ok is false
// for a word that is no metal.
//
// A book is 25 leaves (Encyclopædia Britannica 1911, Goldbeating) and a pack 20
// books (a leaf specification sheet, which gives gold as 3⅜ in). The other
// sizes are from retail descriptions or from memory; laps and the waste
// overhead are common practice, no source.
func StartingLeaf(m Metal) (start LeafStart, ok bool) {
	start = LeafStart{Metal: m, Cover: "100", Waste: "20", PerBook: "25", BooksPerPack: "20",
		Side: `5 1/2"`, Lap: `1/4"`, SideMetric: "140 mm", LapMetric: "6 mm",
		From: "leaf size from a retail description; laps and waste common practice, no source; the pack decides"}
	switch m {
	case Gold:
		start.Side, start.Lap, start.SideMetric, start.LapMetric = `3 3/8"`, `1/8"`, "80 mm", "3 mm"
		start.From = "leaf size from a leaf specification sheet, metric size from memory; laps and waste common practice, no source; the pack decides"
	case Silver:
		start.Side, start.SideMetric = `3 3/4"`, "95 mm"
		start.From = "leaf size from memory; laps and waste common practice, no source; the pack decides"
	case Aluminium, Copper:
		start.From = "leaf size from memory; laps and waste common practice, no source; the pack decides"
	case Imitation:
	default:
		return LeafStart{}, false
	}
	return start, true
}
