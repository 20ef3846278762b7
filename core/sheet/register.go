package sheet

// registering is what comes of hanging in layers: the key of each layer, how a
// layer lies on the one before, the gaps as they are measured, and the tape
// over the seams.
func (b *builder) registering() {
	b.setKeys()
}
