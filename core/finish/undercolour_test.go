package finish

import (
	"testing"

	"ceilingwright/core/problem"

	"github.com/stretchr/testify/assert"
)

func through(kind Kind, name, layer, share string) Ground {
	return Ground{Kind: kind, Basis: Openings, Name: name, Layer: layer, Share: num(share), Known: true}
}

func TestUnderLeaf(t *testing.T) {
	base := Ground{Kind: Base, Basis: Surface, Name: "Base"}
	red, blue := through(Underpaint, "Red", "L1", "0.6"), through(Underpaint, "Blue", "L1", "0.4")
	gold, silver := through(LeafLaying, "Gold", "L1", "0.6"), through(LeafLaying, "Silver", "L1", "0.4")
	goldSize, silverSize := through(SizeCoat, "Size", "L1", "0.6"), through(SizeCoat, "Size", "L1", "0.4")
	for _, c := range []struct {
		name  string
		steps []Ground
		want  []string // pointers
	}{
		{"two metals, each on its colour", []Ground{base, red, blue, goldSize, gold, silverSize, silver}, []string{}},
		{"one after the other", []Ground{base, red, goldSize, gold, blue, silverSize, silver}, []string{}},
		{"one colour under both", []Ground{base, through(Underpaint, "Red", "L1", "1"), goldSize, gold, silverSize, silver}, []string{}},
		{"a coat under both", []Ground{base, {Kind: Coat, Basis: Mask, Name: "Coat"}, goldSize, gold, silverSize, silver}, []string{}},
		{"a coat in the border is not under it", []Ground{base, {Kind: Coat, Basis: Border, Name: "Coat"}, goldSize, gold}, []string{"/3"}},
		{"a coat in other openings", []Ground{base, through(Coat, "Coat", "L2", "1"), goldSize, gold}, []string{"/3"}},
		{"no colour under one", []Ground{base, red, goldSize, gold, silverSize, silver}, []string{"/5"}},
		{"another share", []Ground{base, red, through(Underpaint, "Blue", "L1", "0.3"), goldSize, gold, silverSize, silver}, []string{"/6/share"}},
		{"colour above the leaf", []Ground{goldSize, gold, red}, []string{"/1"}},
		{"no size", []Ground{red, gold}, []string{"/1"}},
		{"size under the first only", []Ground{red, blue, goldSize, gold, silver}, []string{"/2/share"}},
		{"one size under two leaves", []Ground{red, blue, through(SizeCoat, "Size", "L1", "1"), gold, silver}, []string{}},
		{"more size than leaf", []Ground{red, blue, through(SizeCoat, "Size", "L1", "1"), gold, through(LeafLaying, "Silver", "L1", "0.3"), base}, []string{"/2/share", "/4/share"}},
		{"size on another surface", []Ground{{Kind: SizeCoat, Basis: SurfaceOf, Surface: "c"}, red, gold}, []string{"/2"}},
		{"the cornice between", []Ground{red, goldSize, {Kind: Coat, Basis: SurfaceOf, Surface: "c"}, gold}, []string{}},
		{"size in another share", []Ground{red, silverSize, gold}, []string{"/1/share"}},
		{"more than all", []Ground{red, through(Underpaint, "Blue", "L1", "0.5"), goldSize, gold, through(SizeCoat, "Size", "L1", "0.5"), through(LeafLaying, "Silver", "L1", "0.5")}, []string{"/5/share"}},
		{"another layer starts again", []Ground{red, goldSize, gold, through(Underpaint, "Blue", "L2", "0.9"), through(SizeCoat, "Size", "L2", "0.9"), through(LeafLaying, "Silver", "L2", "0.9")}, []string{}},
		{"leaf over the whole ceiling", []Ground{base, {Kind: SizeCoat, Basis: Surface, Name: "Size"}, {Kind: LeafLaying, Basis: Surface, Name: "Gold"}}, []string{}},
		{"no leaf", []Ground{base, red}, []string{}},
	} {
		found := UnderLeaf(c.steps)
		assert.Equal(t, c.want, places(found), c.name)
		for _, p := range found {
			isSentence(t, p)
			assert.NotEqual(t, problem.Stop, p.Severity, "a finish may be meant so")
		}
	}
}
