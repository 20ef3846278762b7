package mask

import "ceilingwright/core/measure"

// Centring is whole panels of one size laid about the middle of a run, with
// what is left at both ends: Whole panels, and at either end one cut to Edge, 0
// where the run ends on a whole panel. OnSeam tells that a seam lies on the
// middle, else a panel does.
type Centring struct {
	OnSeam bool
	Whole  int
	Edge   measure.Length
}

// Centred lays whole panels so that nothing at the ends is a sliver: with a
// panel on the middle or a seam, whichever needs no cut or leaves the larger end
// panel. The two differ by half a panel and gap, so the better is never under
// half a panel (ANSI A108.02, 4.3.1 and 4.3.2, for tiles: centre and balance, no
// cut under half; as reproduced elsewhere). The half of an odd nanometre is
// rounded down. False where not one whole panel fits.
func Centred(run, panel, gap measure.Length) (Centring, bool) {
	if panel <= 0 || gap < 0 || run < panel {
		return Centring{}, false
	}
	onPanel := centring(run-panel-2*gap, panel, gap)
	onPanel.Whole++
	onSeam := centring(run-gap, panel, gap)
	onSeam.OnSeam = true
	switch {
	case onPanel.Edge == 0:
	case onSeam.Edge == 0 && onSeam.Whole > 0, onSeam.Edge > onPanel.Edge:
		return onSeam, true
	}
	return onPanel, true
}

// centring fills both sides of the middle, twice rest together, with panels and
// the gaps between them.
func centring(twiceRest, panel, gap measure.Length) Centring {
	if twiceRest <= 0 {
		return Centring{}
	}
	pitch := panel + gap
	each := twiceRest / (2 * pitch)
	left := twiceRest - 2*pitch*each
	c := Centring{Whole: 2 * int(each), Edge: left / 2}
	// A whole panel and part of a gap after it: the run ends on the panel.
	if left >= 2*panel {
		c.Whole, c.Edge = c.Whole+2, 0
	}
	return c
}
