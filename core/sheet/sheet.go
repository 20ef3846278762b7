package sheet

import "ceilingwright/core/problem"

// Format is the version of the sheet's own form. It changes only when a reader
// of sheets would have to.
const Format = 1

// Sheet is the whole answer to one plan. Texts are ready to be shown, in the
// notation the plan asks for; values are in base units for programs. Lists are
// in the order of the work, so the same plan always gives the same bytes.
type Sheet struct {
	Format   int               `json:"ceilingwright"`
	Version  string            `json:"version"`
	Plan     Heading           `json:"plan"`
	Problems []problem.Problem `json:"problems"`
	Readings []Reading         `json:"readings"`
	Figures  []Figure          `json:"figures"`
	Choices  []Choice          `json:"choices"`
	Walls    []Wall            `json:"walls"`
	Corners  []Corner          `json:"corners"`
	Layers   []Layer           `json:"layers"`
	Steps    []Step            `json:"steps"`
	Shopping []Purchase        `json:"shopping"`
	Safety   []Advice          `json:"safety"`
	Drawings []Drawing         `json:"drawings"`
}

// Heading says whose sheet it is.
type Heading struct {
	ID    string `json:"id"`
	Title string `json:"title"`
}

// Reading is how a length blank of the plan was read: At is its pointer,
// Nanometres the whole count, Text the length in the notation shown and Other
// in the other one ("≈" in front where a rounding hides something). Written is
// filled where a bare number was typed: the same with its unit, to stand in
// the plan in its place before the unit of bare numbers is changed.
type Reading struct {
	At         string `json:"at"`
	Nanometres string `json:"nanometres"`
	Text       string `json:"text"`
	Other      string `json:"other"`
	Written    string `json:"written"`
}

// Figure is one number of the sheet. ID is stable and public. Value is exact
// or, where no exact decimal exists, to twelve places, in Unit: "nm" for
// lengths, "m2", "m3", "L", "mg/m3", "1/h", "h", "" for counts. Text is the
// figure as people read it, Other the same in the other notation, "" where
// there is none.
type Figure struct {
	ID      string  `json:"id"`
	Block   string  `json:"block"`
	Label   string  `json:"label"`
	Value   string  `json:"value"`
	Unit    string  `json:"unit"`
	Text    string  `json:"text"`
	Other   string  `json:"other"`
	Working Working `json:"working"`
}

// Working is how a figure came about: the rule in words, the numbers put in
// with the result, and where the rule comes from.
type Working struct {
	Rule   string `json:"rule"`
	Sum    string `json:"sum"`
	Source string `json:"source"`
}

// Choice is one way to place the mask: On is the plan's word for it, Taken
// whether the plan takes it, Borders the border at each wall, Ends and Sides
// by how much opposite borders differ. Refused says why it cannot be had.
type Choice struct {
	On      string  `json:"on"`
	Title   string  `json:"title"`
	Taken   bool    `json:"taken"`
	Borders Borders `json:"borders"`
	Ends    string  `json:"ends"`
	Sides   string  `json:"sides"`
	Refused string  `json:"refused"`
}

// Borders is the border at each wall, as text.
type Borders struct {
	AB string `json:"AB"`
	BC string `json:"BC"`
	CD string `json:"CD"`
	DA string `json:"DA"`
}

// Wall is the tape run along one wall: every mark measured from corner From,
// each rounded on its own.
type Wall struct {
	Wall   string `json:"wall"`
	From   string `json:"from"`
	To     string `json:"to"`
	Title  string `json:"title"`
	Length string `json:"length"`
	Marks  []Mark `json:"marks"`
}

// Mark is one tick. Kind is box, centre, seam or fixture; Layer the layer's
// name where the mark is one layer's alone. Hides is what the rounding leaves
// out ("0.32 mm more"), "" for none. Exact is in whole nanometres.
type Mark struct {
	Kind  string `json:"kind"`
	Label string `json:"label"`
	Layer string `json:"layer"`
	Text  string `json:"text"`
	Other string `json:"other"`
	Exact string `json:"exact"`
	Hides string `json:"hides"`
}

// Corner is the largest 3-4-5 triangle that fits a corner of the room: Along
// on its length, Across on its width, Diagonal between them.
type Corner struct {
	Corner   string `json:"corner"`
	Along    string `json:"along"`
	Across   string `json:"across"`
	Diagonal string `json:"diagonal"`
	Text     string `json:"text"`
}

// Layer is one layer of the mask. Panels are in reading order, Order in the
// order of hanging, Seams every inner seam. Advice says what the panels and
// gaps add up to against the box and how to set the seams.
type Layer struct {
	ID      string  `json:"id"`
	Name    string  `json:"name"`
	Count   int     `json:"count"`
	Columns []Size  `json:"columns"`
	Rows    []Size  `json:"rows"`
	Panels  []Panel `json:"panels"`
	Order   []Hang  `json:"order"`
	Seams   []Seam  `json:"seams"`
	Advice  string  `json:"advice"`
}

// Size is one panel size along the length (columns) or the width (rows).
type Size struct {
	Text  string `json:"text"`
	Other string `json:"other"`
}

// Panel is one panel; Column and Row count from 1 at corner A, Order is its
// turn in hanging. Cut says where to cut it for the fixture, "" where the
// fixture is not on it.
type Panel struct {
	Label  string `json:"label"`
	Column int    `json:"column"`
	Row    int    `json:"row"`
	Size   string `json:"size"`
	Order  int    `json:"order"`
	Cut    string `json:"cut"`
}

// Hang is one step of hanging: which panel, and what each of its edges is set
// to. Text is the step as a sentence.
type Hang struct {
	N     int       `json:"n"`
	Panel string    `json:"panel"`
	Set   []EdgeSet `json:"set"`
	Text  string    `json:"text"`
}

// EdgeSet is one edge and what it is set to: Edge names the wall it faces.
type EdgeSet struct {
	Edge string `json:"edge"`
	To   string `json:"to"`
}

// Seam is one inner seam with its length.
type Seam struct {
	Seam   string `json:"seam"`
	Length string `json:"length"`
}

// Step is one step of the finish: Figures are the ids of its figures, Buy what
// to buy, LeftOver what will be left, Notes short remarks.
type Step struct {
	ID       string   `json:"id"`
	Name     string   `json:"name"`
	Kind     string   `json:"kind"`
	Figures  []string `json:"figures"`
	Buy      string   `json:"buy"`
	LeftOver string   `json:"leftOver"`
	Notes    []string `json:"notes"`
}

// Purchase is one line of the shopping list.
type Purchase struct {
	What   string `json:"what"`
	Amount string `json:"amount"`
	Detail string `json:"detail"`
}

// Advice is one safety note. At is the blank of the plan it hangs on, Figures
// the ids of the figures it speaks of.
type Advice struct {
	ID           string   `json:"id"`
	Severity     string   `json:"severity"`
	Words        string   `json:"words"`
	Source       string   `json:"source"`
	Jurisdiction string   `json:"jurisdiction"`
	At           string   `json:"at"`
	Figures      []string `json:"figures"`
}

// Drawing is one drawing as SVG. Looking is "up" or "down", Shows "hanging" or
// "marks".
type Drawing struct {
	ID      string `json:"id"`
	Layer   string `json:"layer"`
	Looking string `json:"looking"`
	Shows   string `json:"shows"`
	Title   string `json:"title"`
	SVG     string `json:"svg"`
}
