package core_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/sheet"
)

// platformPlan is the plan "platform" with some places of its first layer and of
// the access changed.
func platformPlan(t *testing.T, places map[string]any) []byte {
	t.Helper()
	plan := planNamed(t, "platform")
	for at, v := range places {
		plan = changed(t, plan, at, v)
	}
	return plan
}

func problemAt(s sheet.Sheet, at string) string {
	for _, p := range s.Problems {
		if p.At == at {
			return string(p.Severity) + ": " + p.What + " " + p.Do
		}
	}
	return ""
}

func TestHangingSaysWhatItCannotFollow(t *testing.T) {
	const layer = "/mask/layers/0"
	for _, c := range []struct {
		name   string
		places map[string]any
		at     string
		says   []string
	}{
		{"a start that is no panel", map[string]any{layer + "/start": "Z9"}, layer + "/start", []string{"caution", "Z9", "C5"}},
		{"a start that has not come", map[string]any{layer + "/start": "C4"}, layer + "/start", []string{"caution", "C4", "missing"}},
		{"up, but no panel", map[string]any{layer + "/up": []any{"B2", "Q7"}}, layer + "/up", []string{"caution", "Q7"}},
		{"crooked, but not up", map[string]any{layer + "/crooked": "A3"}, layer + "/crooked", []string{"caution", "A3", "not up"}},
		{"crooked, but no panel", map[string]any{layer + "/crooked": "Z9"}, layer + "/crooked", []string{"caution", "Z9"}},
		{"half a platform", map[string]any{"/access/deckWidth": ""}, "/access/deckWidth", []string{"note", "not given"}},
		{"a platform of an inch", map[string]any{"/access/deckLength": `1"`, "/access/deckWidth": `1"`, "/access/armReach": "0", "/access/overlap": "0"}, "/access/deckLength", []string{"positions to cover the mask"}},
		{"places that overlap by all they reach", map[string]any{"/access/overlap": "9'"}, "/access/overlap", []string{"stop", "half"}},
		{"a deck longer than the room", map[string]any{"/access/deckLength": "20'"}, "/access/deckLength", []string{"caution", "larger than the room"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := sheetOf(t, platformPlan(t, c.places))
			said := problemAt(s, c.at)
			if c.name == "a platform of an inch" { // the smallest is asked about first, then refused
				for _, p := range s.Problems {
					if p.At == c.at {
						said += p.What
					}
				}
			}
			for _, words := range c.says {
				assert.Contains(t, said, words)
			}
			assert.Len(t, s.Layers[0].Order, 15, "the order is there all the same")
		})
	}
	assert.Empty(t, sheetNamed(t, "platform").Problems)
}

// The worked plan: five are up, B1 is crooked and nothing hangs by it.
func TestHangingGoesOn(t *testing.T) {
	s := sheetNamed(t, "platform")
	l := s.Layers[0]
	assert.Equal(t, []string{"B1"}, l.Restart.Down)
	var up, all []string
	for _, h := range l.Order {
		all = append(all, h.Panel)
		if h.Up {
			up = append(up, h.Panel)
		}
	}
	assert.Equal(t, []string{"B2", "A2", "B3", "C2"}, up)
	assert.Equal(t, "B1", l.Order[len(up)].Panel, "what came down goes up next")
	assert.Equal(t, []string{"C4", "Sun"}, all[len(all)-2:], "what is missing, then what is cut loose")
	assert.Contains(t, strings.Join(all, " "), "A4")
	assert.NotContains(t, all, "A5", "A4 and A5 are one piece")

	for _, p := range l.Panels {
		if p.Label == "A4" || p.Label == "A5" {
			assert.Equal(t, 12, p.Order)
		}
	}
	hung := 0
	for _, st := range l.Stations {
		hung += len(st.Panels)
		for _, label := range st.Panels {
			for _, h := range l.Order {
				if h.Panel == label {
					assert.Equal(t, st.N, h.Station)
				}
			}
		}
	}
	assert.Equal(t, 14, hung, "every step but the loose piece is hung from somewhere")
	assert.Equal(t, "5", figures(s)["L1.stations"].Value)

	// Ticked as said, nothing changes but the ticks; the loose piece too.
	plan := platformPlan(t, map[string]any{"/mask/layers/0/crooked": "", "/mask/layers/0/up": []any{}})
	fresh := sheetOf(t, plan).Layers[0].Order
	var ticked []any
	for i, h := range fresh {
		ticked = append(ticked, h.Panel)
		now := sheetOf(t, changed(t, plan, "/mask/layers/0/up", ticked)).Layers[0].Order
		require.Len(t, now, len(fresh))
		for j := range now {
			require.Equal(t, fresh[j].Panel, now[j].Panel)
			require.Equal(t, j <= i, now[j].Up, "%s after %d", now[j].Panel, i+1)
			require.Equal(t, fresh[j].Station, now[j].Station)
		}
	}
}

// Without a platform the order is as it was, and nothing is said of places.
func TestHangingWithoutAPlatform(t *testing.T) {
	s := sheetNamed(t, "full")
	for _, l := range s.Layers {
		assert.Empty(t, l.Stations)
		assert.Empty(t, l.Route)
		assert.Empty(t, l.Restart.Down)
		for _, h := range l.Order {
			assert.Zero(t, h.Station)
			assert.Len(t, h.Measures, 3)
			assert.Regexp(t, `^-?\d+ -?\d+ \d+ \d+$`, h.View)
		}
	}
}

// A box turned a quarter: the side AB of the box faces wall BC, so that is what
// every step calls it, and the deck that lies along the mask lies along BC.
func TestHangingInATurnedBox(t *testing.T) {
	plan := platformPlan(t, map[string]any{"/mask/layers/0/crooked": "", "/mask/length": "10'", "/mask/width": "8'", "/access/turn": "no"})
	straight := sheetOf(t, plan).Layers[0]
	plan = []byte(strings.Replace(string(plan), `"setting":{`, `"setting":{"turned":"yes",`, 1))
	s := sheetOf(t, plan)
	turned := s.Layers[0]
	facing := strings.NewReplacer("towards WX", "towards XY", "towards XY", "towards YZ", "towards YZ", "towards ZW", "towards ZW", "towards WX")
	require.Len(t, turned.Order, len(straight.Order))
	for i, h := range straight.Order {
		assert.Equal(t, facing.Replace(h.Text), turned.Order[i].Text)
		for j, m := range h.Measures {
			assert.Equal(t, sheet.Measure{What: facing.Replace(m.What), Text: m.Text, Sum: m.Sum}, turned.Order[i].Measures[j])
		}
	}
	assert.Contains(t, straight.Stations[0].Text, "its length along WX")
	assert.Contains(t, turned.Stations[0].Text, "its length along XY")
}

// The line of signs says of every edge what the sentence says, turned or not.
func TestHangingInALineOfSigns(t *testing.T) {
	plan := string(platformPlan(t, map[string]any{"/mask/layers/0/crooked": "", "/mask/length": "10'", "/mask/width": "8'"}))
	for _, turned := range []string{"no", "yes"} {
		order := sheetOf(t, []byte(strings.Replace(plan, `"setting":{`, `"setting":{"turned":"`+turned+`",`, 1))).Layers[0].Order
		require.NotEmpty(t, order)
		for _, h := range order {
			if h.Set[0].Edge == "" {
				continue // a loose piece, on its own marks
			}
			signs := strings.Split(h.Brief, " · ")
			require.Len(t, signs, len(h.Set), h.Text)
			for i, set := range h.Set {
				wall, to, _ := strings.Cut(signs[i], " ")
				assert.Equal(t, set.Edge, "towards "+wall, h.Text)
				assert.True(t, strings.HasSuffix(set.To, " "+to), "%s: %s", set.To, to)
			}
		}
	}
}
