package tell

import (
	tellhanging "ceilingwright/core/tell/hanging"
	safetypage "ceilingwright/core/tell/safety"
)

// safety is the block Safety: the platform, the air and the notes.
func (b *builder) safety() {
	safetypage.Checks(&b.Page, b.Job)
	tellhanging.Stands(&b.Page, b.Job)
	safetypage.Tell(&b.Page, b.Job)
	b.Sheet.Air.Curve = b.drawer().Air(b.Sheet.Air.Text)
}
