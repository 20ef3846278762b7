package setout_test

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

func TestMarks_RunFromOneEnd(t *testing.T) {
	site := siteOf(room, light)
	box := placed(t, site, setout.OnFixture, supper)
	walls := site.Marks(box, []mask.Layer{layerOf(supper, 4, 2)})
	require.Len(t, walls, 4)

	quarter := supper.Length / 4
	ab := walls[0]
	assert.Equal(t, setout.End{Wall: survey.CD, From: survey.D, At: box.X}, ab.Marks[0].Join)
	for _, w := range walls {
		for i, m := range w.Marks {
			assert.Equal(t, m.At, m.Join.At, "lines run square across")
			w.Marks[i].Join = setout.End{}
		}
	}
	assert.Equal(t, setout.WallMarks{Wall: survey.AB, From: survey.A, To: survey.B, Length: room.Length, Marks: []setout.Mark{
		{Kind: setout.BoxMark, Label: "DA", At: box.X},
		{Kind: setout.SeamMark, Label: "1│2", Layer: "L1", At: box.X + quarter},
		{Kind: setout.CentreMark, At: 105 * inch},
		{Kind: setout.FixtureMark, At: 105 * inch},
		{Kind: setout.SeamMark, Label: "2│3", Layer: "L1", At: box.X + 2*quarter},
		{Kind: setout.SeamMark, Label: "3│4", Layer: "L1", At: box.X + 3*quarter},
		{Kind: setout.BoxMark, Label: "BC", At: box.X + supper.Length},
	}}, ab)

	bc := walls[1]
	assert.Equal(t, []measure.Length{box.Y, 80 * inch, 80 * inch, 80 * inch, box.Y + supper.Width},
		[]measure.Length{bc.Marks[0].At, bc.Marks[1].At, bc.Marks[2].At, bc.Marks[3].At, bc.Marks[4].At})
	assert.Equal(t, "A│B", bc.Marks[3].Label)

	// Opposite walls are read from the same end.
	for i, want := range []setout.WallMarks{
		{Wall: survey.CD, From: survey.D, To: survey.C, Length: room.Length, Marks: ab.Marks},
		{Wall: survey.DA, From: survey.A, To: survey.D, Length: room.Width, Marks: bc.Marks},
	} {
		assert.Equal(t, want, walls[2+i])
	}
}

func TestMarks_SeamsTakeUpTheRunOut(t *testing.T) {
	// Three columns 6 mm over in a box of 3000: each seam closes by 3 mm, so
	// the first panel ends at 1002 and the next begins at 999.
	hall, o := survey.Room{Length: 4000 * mm, Width: 2000 * mm}, mask.Outline{Length: 3000 * mm, Width: 1000 * mm}
	layer := mask.Layer{ID: "L2", Columns: []measure.Length{1002 * mm, 1002 * mm, 1002 * mm}, Rows: []measure.Length{1000 * mm}}
	site := siteOf(hall, survey.Fixture{})
	marks := site.Marks(placed(t, site, setout.OnRoom, o), []mask.Layer{layer})[0].Marks
	assert.Equal(t, 1500*mm+500_000, marks[1].At, "500 of border, then the middle between 999 and 1002")
	assert.Equal(t, 2499*mm+500_000, marks[3].At)
	assert.Equal(t, "L2", marks[1].Layer)
	assert.Equal(t, 3500*mm, marks[4].At, "and the last lands on its tape line")

	empty := site.Marks(placed(t, site, setout.OnRoom, o), []mask.Layer{{ID: "L3"}})
	assert.Len(t, empty[0].Marks, 3, "a layer without panels adds no seam")
}

func TestMark_RoundingNeverBuildsUp(t *testing.T) {
	random := rand.New(rand.NewSource(4))
	for range 300 {
		hall := survey.Room{Length: 3*measure.Metre + measure.Length(random.Int63n(int64(9*measure.Metre))), Width: 3 * measure.Metre}
		o := mask.Outline{Length: hall.Length - measure.Length(random.Int63n(int64(measure.Metre))), Width: 2 * measure.Metre}
		n := 1 + random.Intn(25)
		site := siteOf(hall, survey.Fixture{})
		box := placed(t, site, setout.OnRoom, o)
		marks := site.Marks(box, []mask.Layer{layerOf(o, n, 1)})[0].Marks
		last, seam := measure.Length(0), 0
		for _, m := range marks {
			require.GreaterOrEqual(t, m.At, last)
			last = m.At
			for _, tape := range []measure.Length{inch / 64, inch / 16, mm, 5 * mm} {
				require.Zero(t, m.Rounded(tape)%tape)
				require.LessOrEqual(t, 2*m.Hides(tape).Abs(), tape)
				require.Equal(t, m.Rounded(tape), m.At+m.Hides(tape))
			}
			if m.Kind != setout.SeamMark {
				continue
			}
			seam++
			// Every seam is within a nanometre of i ÷ n of the box.
			off := (m.At-box.X)*measure.Length(n) - o.Length*measure.Length(seam)
			require.LessOrEqual(t, off.Abs(), measure.Length(n))
		}
		require.Equal(t, n-1, seam)
	}
}
