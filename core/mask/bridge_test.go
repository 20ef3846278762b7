package mask_test

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
)

// Worked by hand with the lap of 1 in: n pieces cover n × piece − (n − 1) in.
func TestBridges_ByHand(t *testing.T) {
	for _, c := range []struct {
		name          string
		seam, longest measure.Length
		pieces        int
		piece, length measure.Length
	}{
		{"no longest piece: the whole seam", 20 * foot, 0, 1, 20 * foot, 20 * foot},
		{"within reach", 6 * foot, 6 * foot, 1, 6 * foot, 6 * foot},
		{"an inch more than two pieces cover", 12 * foot, 6 * foot, 3, 48*inch + 2*inch/3 + 1, 12*foot + 2*inch},
		{"just covered by two", 12*foot - inch, 6 * foot, 2, 6 * foot, 12 * foot},
		{"a hair more", 12*foot - inch + 1, 6 * foot, 3, (12*foot + inch + 1) / 3, 12*foot + inch + 1},
		{"eleven feet three and a half by four", 135*inch + inch/2, 4 * foot, 3, (137*inch + inch/2 + 2) / 3, 137*inch + inch/2},
		{"a longest piece that would be all laps does not count", 12 * foot, 2 * inch, 1, 12 * foot, 12 * foot},
	} {
		got := mask.Bridging{Piece: c.longest}.Bridges([]mask.Seam{{Name: "1│2", Length: c.seam}})
		require.Len(t, got, 1, c.name)
		assert.Equal(t, c.pieces, got[0].Pieces, c.name)
		assert.Equal(t, c.piece, got[0].Piece, c.name)
		assert.Equal(t, c.length, got[0].Length, c.name)
	}
	assert.Empty(t, mask.Bridging{}.Bridges(nil))
}

func TestBridges_LeastThatCovers(t *testing.T) {
	random := rand.New(rand.NewSource(31))
	for range 2000 {
		seam := measure.Length(random.Int63n(int64(20*measure.Metre))) + 1
		longest := mask.ShortestPiece + measure.Length(random.Int63n(int64(3*measure.Metre)))
		b := mask.Bridging{Piece: longest}.Bridges([]mask.Seam{{Length: seam}})[0]
		covered := func(n int) measure.Length {
			return measure.Length(n)*longest - measure.Length(n-1)*mask.JoinLap
		}
		require.GreaterOrEqual(t, covered(b.Pieces), seam)
		require.True(t, b.Pieces == 1 || covered(b.Pieces-1) < seam, "one piece fewer covers %v too", seam)
		require.LessOrEqual(t, b.Piece, max(longest, 0))
		require.Equal(t, seam+measure.Length(b.Pieces-1)*mask.JoinLap, b.Length)
		require.GreaterOrEqual(t, b.Piece*measure.Length(b.Pieces), b.Length)
		require.Less(t, b.Piece*measure.Length(b.Pieces)-b.Length, measure.Length(b.Pieces))
	}
}

// Tape of 2 in over a gap of 1/4 in holds 7/8 in on either side; 10 mm on
// either side bridges up to 30.8 mm.
func TestBridging_Hold(t *testing.T) {
	tape := mask.Bridging{Width: 2 * inch}
	assert.Equal(t, 7*inch/8, tape.Hold(inch/4))
	assert.Equal(t, 30_800_000*measure.Nanometre, tape.WidestGap())
	assert.Equal(t, mask.LeastHold, tape.Hold(tape.WidestGap()))
	assert.Equal(t, -5*mm, mask.Bridging{Width: 15 * mm}.WidestGap(), "tape of 15 mm bridges nothing safely")
	assert.Equal(t, 7_500_000*measure.Nanometre, mask.Bridging{Width: 15 * mm}.Hold(0))
}
