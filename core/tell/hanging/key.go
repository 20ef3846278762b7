package hanging

import (
	"ceilingwright/core/hanging"
	"ceilingwright/core/job/hung"
	"ceilingwright/core/mask"
	"ceilingwright/core/register"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/setting"
	"ceilingwright/core/words"
)

// key is the panel of layer i that is kept up for the next.
func (t *teller) key(i int) sheet.Key {
	k := t.Hung(i).Key
	if !k.IsKept() {
		if !k.All {
			return sheet.Key{}
		}
		return sheet.Key{Reason: t.Say("Every panel of the next layer would lie on whichever stays up, so none can. Set the next layer to the lines and check it by marks.")}
	}
	why := t.whyUser(k)
	if k.Chosen == hung.ByTool {
		why = whyTool(k)
	}
	if len(k.Touches) == 0 {
		why = words.Sentences(why, t.beside(k.Sides))
	}
	next := t.Hung(i + 1)
	return sheet.Key{
		Panel: k.Name(), Chosen: string(k.Chosen), Reason: t.Told(why), Lies: labels(k.Lies), Touches: labels(k.Touches),
		Down: t.Told(down(next.Order, next.KeyDown)), Masked: t.Told(masked(k.Lies)),
	}
}

func labels(panels []mask.Panel) []string {
	labels := make([]string, len(panels))
	for i, p := range panels {
		labels[i] = p.Label()
	}
	return labels
}

// whyTool is the reason for the sheet's choice.
func whyTool(k *hung.Key) words.Text {
	lies, from := words.Of("lies", liesOn(k)), k.From
	why := words.Say("{lies}; no other panel has fewer, and of those it is nearest the middle.", lies)
	switch {
	case from.Whole && from.InReach:
		why = words.Say("{lies}; no other whole panel in reach from one platform position has fewer, and of those it is nearest the middle.", lies)
	case from.Whole:
		why = words.Say("{lies}; no other whole panel has fewer, and of those it is nearest the middle.", lies)
	case from.InReach:
		why = words.Say("{lies}; no other panel in reach from one platform position has fewer, and of those it is nearest the middle.", lies)
	}
	switch {
	case from.Unwhole:
		return words.Sentences(why, words.Say("Every panel of the layer is cut or missing: check that its edges are straight."))
	case from.OutOfReach:
		return words.Sentences(why, words.Say("No whole panel is in reach from one platform position: move the platform to set the next layer against all its edges."))
	}
	return why
}

// whyUser is what the user's choice costs.
func (t *teller) whyUser(k *hung.Key) words.Text {
	lies, fewest := words.Of("lies", liesOn(k)), len(k.Best.Lies)
	why, cost := words.Say("{lies}.", lies), words.Text{}
	if len(k.Lies) == fewest {
		why = words.Say("{lies}, as few as on any other.", lies)
	}
	switch {
	case k.All:
		cost = words.Say("That is every one: it must come down before any goes up.")
	case len(k.Lies) > fewest:
		cost = words.Say("On {panel} there would be {n}.", words.Name("panel", k.Best.Piece.Name), words.Count("n", fewest))
	}
	return words.Sentences(words.Say("Your choice."), why, cost, t.flaw(&k.Flaw))
}

// flaw is what speaks against a key.
func (t *teller) flaw(f *hung.Flaw) words.Text {
	switch f.Kind {
	case hung.IsMissing:
		return words.Say("It is missing.")
	case hung.IsDamaged:
		return words.Say("It is damaged.")
	case hung.CutForPiece:
		return words.Say("It is cut for the loose piece “{piece}”.", words.Name("piece", f.Piece))
	case hung.CutForThing:
		return words.Say("It is cut for {thing}.", words.Of("thing", setting.Called(&t.Room.Things[f.Thing])))
	case hung.BeyondReach:
		return words.Say("Not all of it is in reach from one platform position.")
	}
	return words.Text{}
}

// liesOn says how many panels of the next layer lie on a key.
func liesOn(k *hung.Key) words.Text {
	switch len(k.Lies) {
	case 0:
		return words.Say("No panel of the next layer lies on it")
	case 1:
		return words.Say("Only {panel} of the next layer lies on it", words.Name("panel", k.Lies[0].Label()))
	}
	return words.Say("{n} panels of the next layer lie on it", words.Count("n", len(k.Lies)))
}

// down says when a key comes down: before a step of the next layer, counted from 0.
func down(order []hanging.Hang, first int) words.Text {
	switch {
	case first == len(order):
		return words.Say("Leave it up until the next layer is hung; nothing lies on it.")
	case first == 0:
		return words.Say("Before {panel} of the next layer, the first to go up.", words.Name("panel", order[0].Panel.Label()))
	}
	return words.Say("When {n} of {all|panel|panels} of the next layer are up, before {panel}.",
		words.Count("n", first), words.Count("all", len(order)), words.Name("panel", order[first].Panel.Label()))
}

// masked says what of the ceiling a key covers.
func masked(lies []mask.Panel) words.Text {
	switch len(lies) {
	case 0:
		return words.Text{}
	case 1:
		return words.Say("The ceiling under it is covered until then: coat the next layer when {panel} is up too.", words.Name("panel", lies[0].Label()))
	}
	return words.Say("The ceiling under it is covered until then: coat the next layer when the {n} panels that lie on it are up too.", words.Count("n", len(lies)))
}

// beside says where the next layer begins beside a key that none of its edges falls on.
func (t *teller) beside(sides []register.Side) words.Text {
	for _, side := range sides {
		if side.Away > 0 {
			return words.Say("No edge of the next layer falls on its edges: {side}, {panel} begins {away} from it.",
				words.Of("side", t.towards(side.Wall)), words.Name("panel", side.Panels[0].Label()), words.Fine("away", side.Away))
		}
	}
	return words.Say("No edge of the next layer falls on its edges: set that layer to the lines.")
}
