package finish

import (
	"strconv"

	"ceilingwright/core/words"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// Ground is a step as far as the leaf above it is concerned: where it goes, and
// the Share of the openings of Layer that it goes into, where Basis is Openings
// and Known. Surface is the other surface it is on, "" for the ceiling.
type Ground struct {
	Kind           Kind
	Basis          Basis
	Name           string
	Layer, Surface string
	Share          measure.Number
	Known          bool
}

// isInOpenings tells whether the step goes into a known share of the openings of
// a layer.
func (g *Ground) isInOpenings(of Kind) bool { return g.Kind == of && g.Basis == Openings && g.Known }

// UnderLeaf looks at all steps of a job, in their order, for what is wrong with
// the leaf among them: leaf without size right before it on the same surface or
// with size in another share of the openings, leaf of one layer in more than all
// its openings, and leaf without a colour of its own share below it. Pointers
// begin with the number of the step, from 0.
//
// Leaf is full of pinholes, so the colour below it shows through (Armstrong,
// Cyclopedia of Painting, 1908, p. 164).
func UnderLeaf(steps []Ground) []problem.Problem {
	var found []problem.Problem
	taken := make([]bool, len(steps)) // underpaints that belong to a leaf
	leafed := map[string]measure.Number{}
	for i := range steps {
		if steps[i].Kind != LeafLaying {
			continue
		}
		found = append(found, sizeRemarks(steps, i)...)
		if steps[i].isInOpenings(LeafLaying) {
			leafed[steps[i].Layer] = leafed[steps[i].Layer].Add(steps[i].Share)
			found = append(found, moreThanAll(&steps[i], i, leafed[steps[i].Layer])...)
		}
	}
	for i := range steps {
		if steps[i].isInOpenings(LeafLaying) {
			found = append(found, colourRemarks(steps, i, leafed[steps[i].Layer], taken)...)
		}
	}
	return found
}

// isUnderAll tells whether a coat lies under all of a leaf in the openings.
func (g *Ground) isUnderAll(leaf *Ground) bool {
	switch g.Basis {
	case Openings:
		return g.Layer == leaf.Layer && g.Known && g.Share.Cmp(leaf.Share) >= 0
	case Mask, Surface, Typed:
		return g.Surface == leaf.Surface
	}
	return false
}

func atStep(i int, blank string) string { return "/" + strconv.Itoa(i) + blank }

// moreThanAll is said of the leaf that brings a layer above all its openings.
func moreThanAll(leaf *Ground, i int, sum measure.Number) []problem.Problem {
	if sum.Cmp(measure.NumberFromInt(1)) <= 0 {
		return nil
	}
	return []problem.Problem{{At: atStep(i, "/share"), Severity: problem.Caution,
		What: words.Say("With “{leaf}” the leaf of this layer goes into {share} of its openings.", words.Name("leaf", leaf.Name), words.PerCent("share", sum)),
		Do:   words.Say("Give shares that come to 100 per cent at most, unless one leaf is laid over another.")}}
}

// sizeRemarks is whether a leaf on its surface is laid right on a size, or on one
// with the leaf before it. The last on a size is held against it with the others.
func sizeRemarks(steps []Ground, leaf int) []problem.Problem {
	size := SizeUnder(leaf, func(i int) (Kind, string) { return steps[i].Kind, steps[i].Surface })
	if size < 0 {
		return noSize(&steps[leaf], leaf)
	}
	under, names, all := &steps[size], []string(nil), measure.Number{}
	for i := size + 1; i < len(steps); i++ {
		l := &steps[i]
		switch {
		case l.Surface != under.Surface:
			continue
		case l.Kind == LeafLaying && i > leaf:
			return nil // said of the last
		case l.Kind != LeafLaying:
			i = len(steps)
			continue
		case !under.isInOpenings(SizeCoat) || !l.isInOpenings(LeafLaying) || under.Layer != l.Layer:
			return nil
		}
		names, all = append(names, "“"+l.Name+"”"), all.Add(l.Share)
	}
	if under.Share.Cmp(all) == 0 {
		return nil
	}
	return []problem.Problem{{At: atStep(size, "/share"), Severity: problem.Caution,
		What: words.Say("The size goes into {size} of the openings, {leaf} into {all}.", words.PerCent("size", under.Share), words.And("leaf", names), words.PerCent("all", all)),
		Do:   words.Say("Give both the same share: size without leaf stays sticky, leaf without size does not hold.")}}
}

// SizeUnder is which step is the size that a leaf is laid on: the step
// before it on its surface, or before the leaf that is laid on it first. −1 where that
// is none.
func SizeUnder(leaf int, of func(i int) (kind Kind, surface string)) int {
	_, on := of(leaf)
	for i := leaf - 1; i >= 0; i-- {
		kind, surface := of(i)
		switch {
		case surface != on || kind == LeafLaying:
			continue
		case kind == SizeCoat:
			return i
		}
		return -1
	}
	return -1
}

func noSize(leaf *Ground, i int) []problem.Problem {
	return []problem.Problem{{At: atStep(i, ""), Severity: problem.Caution,
		What: words.Say("No size is laid right before “{leaf}”.", words.Name("leaf", leaf.Name)), Do: words.Say("Add a step of size before this leaf.")}}
}

// colourRemarks is whether an underpaint of its own share lies below a leaf. One
// below all leaf of the layer serves as well, and where there is no underpaint a
// coat through the mask or over all of it. all is the share of all leaf of the
// layer.
func colourRemarks(steps []Ground, leaf int, all measure.Number, taken []bool) []problem.Problem {
	l, other := &steps[leaf], -1
	for i := leaf - 1; i >= 0; i-- {
		s := &steps[i]
		switch {
		case s.Kind == Coat && s.isUnderAll(l):
			return nil
		case !s.isInOpenings(Underpaint) || s.Layer != l.Layer || taken[i]:
			continue
		case s.Share.Cmp(l.Share) == 0:
			taken[i] = true
			return nil
		case s.Share.Cmp(all) >= 0:
			return nil
		}
		if other < 0 {
			other = i
		}
	}
	if other >= 0 {
		return []problem.Problem{{At: atStep(leaf, "/share"), Severity: problem.Note,
			What: words.Say("“{leaf}” goes into {share} of the openings, “{colour}” below it into {below}.",
				words.Name("leaf", l.Name), words.PerCent("share", l.Share), words.Name("colour", steps[other].Name), words.PerCent("below", steps[other].Share)),
			Do: words.Say("Give both the same share, so that the undercolour lies under all of this leaf and under nothing else.")}}
	}
	return []problem.Problem{{At: atStep(leaf, ""), Severity: problem.Note,
		What: words.Say("No colour is painted under “{leaf}”, and what lies below leaf shows through its pinholes.", words.Name("leaf", l.Name)),
		Do:   words.Say("Add a colour under the leaf for this leaf's share, the colour that is to show, unless the base is that colour or the size is tinted.")}}
}
