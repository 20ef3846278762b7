package tell_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/sheet"
)

func gapAt(t *testing.T, s sheet.Sheet, seam string) sheet.Gap {
	t.Helper()
	for _, g := range s.Layers[0].Gaps {
		if g.Seam == seam {
			return g
		}
	}
	require.Fail(t, "no such seam", seam)
	return sheet.Gap{}
}

func problemsBelow(s sheet.Sheet, at string) (found []sheet.Problem) {
	for _, p := range s.Problems {
		if strings.HasPrefix(p.At, at) {
			found = append(found, p)
		}
	}
	return found
}

// Three columns of 1198⅔ mm with 2 mm at two seams, hung from the middle one.
func TestGaps_Words(t *testing.T) {
	planned := layered(t, "", "")
	require.Len(t, planned.Layers[0].Gaps, 4)
	g := gapAt(t, planned, "1│2")
	assert.Equal(t, sheet.Gap{Seam: "1│2", Planned: "2 mm", Set: "2 mm", Text: "Set it to 2 mm; the next panel's edge is then 1.199 m from the tape line towards ZW.",
		Offers: []string{"0 mm", "1 mm", "2 mm", "3 mm", "4 mm"}}, g)
	assert.Empty(t, problemsBelow(planned, "/mask/layers/0/gaps"))

	s := layered(t, `,"gaps":[{"seam":"2│3","gap":"5"},{"seam":"b|c","gap":"2"},{"seam":"A│B","gap":"0"}]`, "")
	g = gapAt(t, s, "2│3")
	assert.Equal(t, "/mask/layers/0/gaps/0/gap", g.At)
	assert.Equal(t, "5 mm", g.Measured)
	assert.Equal(t, "3 mm wider than planned.", g.Text)
	assert.Equal(t, []string{"3 mm", "4 mm", "5 mm", "6 mm", "7 mm"}, g.Offers)
	assert.Equal(t, "As planned.", gapAt(t, s, "B│C").Text)
	assert.Equal(t, "2 mm narrower than planned.", gapAt(t, s, "A│B").Text)
	assert.Equal(t, "2 mm", gapAt(t, s, "1│2").Set, "the other side is not touched")
	assert.Equal(t, []sheet.Problem{
		{At: "/mask/layers/0/gaps/0/gap", Page: "hanging", Severity: problem.Caution, What: "The panels will run 3 mm past the tape line towards XY.",
			Do: "Trim the last panel there by that much, or take down what was hung too wide."},
		{At: "/mask/layers/0/gaps/2/gap", Page: "hanging", Severity: problem.Caution, What: "The panels end 2 mm short of the tape line towards WX.",
			Do: "Move the tape line there, or take down what was hung too tight."},
	}, problemsBelow(s, "/mask/layers/0/gaps"))
}

func TestGaps_WhatCannotBeRead(t *testing.T) {
	s := layered(t, `,"gaps":[{"seam":"3│4","gap":"1"},{"seam":"C│D","gap":"1"},{"seam":"the long one","gap":"1"},{"seam":"1│2","gap":"2000"},{"seam":"1│2","gap":""},{"seam":"","gap":"3"}]`, "")
	var places []string
	for _, p := range problemsBelow(s, "/mask/layers/0/gaps") {
		places = append(places, string(p.Severity)+" "+strings.TrimPrefix(p.At, "/mask/layers/0/gaps"))
	}
	assert.Equal(t, []string{"stop /0/seam", "stop /1/seam", "stop /2/seam", "stop /3/gap", "stop /5/seam"}, places)
	assert.Empty(t, gapAt(t, s, "1│2").Measured, "no gap is measured")
}

// What is offered is read back as it is written, in either notation.
func TestGaps_OffersAreRead(t *testing.T) {
	for _, show := range []string{"metric", "feet-inches"} {
		s := built(t, `{"ceilingwright":1,"units":{"show":"`+show+`","bare":"mm","metricMark":"1 mm","inchMark":"1/32 in"},"room":{"length":"4400","width":"3100"},
			"mask":{"length":"3600","width":"2400","layers":[{"id":"L1","split":"count","columns":"3","rows":"3","gap":"3.3"}]}}`)
		for _, g := range s.Layers[0].Gaps {
			last := measure.Length(-1)
			for _, offer := range g.Offers {
				l, err := measure.Parse(offer, measure.UnitMillimetre)
				require.NoError(t, err, offer)
				require.Greater(t, l, last, "offers rise")
				last = l
			}
		}
	}
}

func TestBridges_OnTheSheet(t *testing.T) {
	taped := func(seams string) *sheet.Sheet {
		return built(t, `{"ceilingwright":1,"units":{"show":"metric","bare":"mm","metricMark":"1 mm"},"room":{"length":"4400","width":"3100"},
			"mask":{"length":"3600","width":"2400","layers":[{"id":"L1","split":"count","columns":"3","rows":"2","gap":"4"}]},"seams":{"cover":"seams","rollLength":"50 m","waste":"10"`+seams+`}}`)
	}
	figure := func(s *sheet.Sheet, id string) string {
		for _, f := range s.Figures {
			if f.ID == id {
				return f.Text
			}
		}
		return ""
	}
	whole := taped("")
	assert.Equal(t, sheet.Bridge{Seam: "1│2", Pieces: 1, Length: "2.400 m"}, whole.Layers[0].Bridges[0])
	assert.Equal(t, "3", figure(whole, "L1.bridges"))
	assert.Equal(t, "8.400 m", figure(whole, "tape.length"))

	// 2400 and 3600 in pieces of at most 1300, lapping by 25.4: two cover 2574.6,
	// three 3849.2. So 2 + 2 + 3 pieces with four laps, 101.6 mm.
	pieces := taped(`,"pieceLength":"1300","tapeWidth":"23.9"`)
	assert.Equal(t, "1│2: 2 pieces of 1.213 m, each lapping the one before by 25 mm.", pieces.Layers[0].Bridges[0].Text)
	assert.Equal(t, "7", figure(pieces, "L1.bridges"))
	assert.Equal(t, "8.502 m", figure(pieces, "tape.length"))
	assert.Equal(t, []sheet.Problem{{At: "/seams/tapeWidth", Page: "hanging", Severity: problem.Caution, What: "Over the gap of 4 mm at seam 1│2 tape of 23.9 mm covers just under 10 mm of the panel on either side.",
		Do: "Use tape of 24 mm or wider, so that it holds about 10 mm on either side (common practice, no source)."}}, problemsBelow(*pieces, "/seams/tapeWidth"))
	assert.Empty(t, problemsBelow(*taped(`,"tapeWidth":"24"`), "/seams"))
	assert.Len(t, problemsBelow(*taped(`,"pieceLength":"50"`), "/seams/pieceLength"), 1)
	assert.Contains(t, problemsBelow(*taped(`,"tapeWidth":"3 mm"`), "/seams")[0].What, "does not reach across")
}
