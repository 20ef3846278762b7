package hanging

// offer is a block that may be hung next, with what decides between offers.
type offer struct {
	distance wide
	touching int32 // neighbours that are up
	block    int32
}

// before tells whether an offer is taken first: the nearer, then the one that
// touches more, then the one in the lower row, then in the lower column.
func (o offer) before(p offer) bool {
	switch {
	case o.distance != p.distance:
		return o.distance.less(p.distance)
	case o.touching != p.touching:
		return o.touching > p.touching
	}
	return o.block < p.block // blocks are numbered row by row
}

// offers is a binary heap, the first offer on top. It is written out because
// the standard one boxes every entry.
type offers []offer

func (h *offers) push(o offer) {
	*h = append(*h, o)
	list := *h
	for i := len(list) - 1; i > 0; {
		parent := (i - 1) / 2
		if !list[i].before(list[parent]) {
			return
		}
		list[i], list[parent] = list[parent], list[i]
		i = parent
	}
}

func (h *offers) pop() offer {
	list := *h
	first, last := list[0], len(list)-1
	list[0] = list[last]
	*h = list[:last]
	h.sink()
	return first
}

func (h *offers) sink() {
	list := *h
	for i := 0; ; {
		child := 2*i + 1
		if child >= len(list) {
			return
		}
		if child+1 < len(list) && list[child+1].before(list[child]) {
			child++
		}
		if !list[child].before(list[i]) {
			return
		}
		list[i], list[child] = list[child], list[i]
		i = child
	}
}
