package days

import (
	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
)

// What work is counted at where the plan gives no time for it: minutes of one
// person's work, UsualHang and UsualMove of those who do it together. Common
// practice, no source; a crew's own times replace them.
const (
	UsualProtect int64 = 180 // the whole job
	UsualSurvey  int64 = 90  // the whole job
	UsualMark    int64 = 120 // a layer
	UsualHang    int64 = 12  // a panel
	UsualPeel    int64 = 5   // a panel
	UsualMove    int64 = 5   // a move of the platform
	UsualTouchUp int64 = 120 // the whole job
	UsualClear   int64 = 90  // the whole job
)

// UsualLine is how far tape is laid, or an edge sealed by brush, in an hour:
// 60 to 150 ft. Common practice, no source.
const UsualLine = 100 * measure.Foot

// UsualOpen is how long size without a closing time is counted on to take leaf,
// in minutes: until dust settles on it (two gilders' notes; the day is common
// practice, no source).
const UsualOpen int64 = Day

// UsualReserve is the share of the time in which size takes leaf that is kept
// back: a fifth. Common practice, no source.
var UsualReserve = measure.MustNumber("0.2")

// UsualRate is the area one person does overhead in an hour where the plan does
// not say. A coat rolled or brushed goes at 150 ft² an hour (Griffith,
// Carpentry, first coat; a painter's job-cost article), a glaze takes 2.46 times
// as long as a finish coat (National Home Improvement Estimator 2018: 160 and 65
// ft of trim an hour), varnish goes at 200 ft²; overhead a fifth more time. Gold
// is laid at 8 ft² an hour, other leaf at 20, overhead at seven tenths of it. The
// last three are common practice, no source. All are rounded.
func UsualRate(kind finish.Kind, metal finish.Metal) measure.Area {
	feet := int64(125)
	switch kind {
	case finish.Glaze:
		feet = 50
	case finish.ClearSeal, finish.ClearCoat:
		feet = 165
	case finish.LeafLaying:
		feet = 14
		if metal == finish.Gold {
			feet = 6
		}
	}
	return measure.Area{SquareMetres: measure.SquareFoot.Mul(measure.NumberFromInt(feet))}
}

// LeastFilmAge is how many days old paint must be before any tape is stuck to
// it: a decal seller's page and makers of delicate tape ask for 24 h, others for
// more.
const LeastFilmAge int64 = 1

// UsualFilmAge is how many days paint ages before an ordinary mask is stuck to
// it. Trade notes give 14 to 30 days for paint on water and 3 to 7 for oil; the
// gates of 14 and 7 are common practice, no source.
func UsualFilmAge(oil bool) int64 {
	if oil {
		return 7
	}
	return 14
}
