package sheet

// Layer is one layer of the mask. Panels are in reading order, Order in the
// order of hanging, Seams every inner seam. Advice says what the panels and
// gaps add up to against the box and how to set the seams. Route is how the
// platform goes from station to station, Flags what the seams run into.
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

	Delivery Delivery   `json:"delivery"`
	Pieces   []Piece    `json:"pieces"`
	Stations []Station  `json:"stations"`
	Route    string     `json:"route"`
	Restart  Restart    `json:"restart"`
	Gaps     []Gap      `json:"gaps"`
	Bridges  []Bridge   `json:"bridges"`
	Flags    []string   `json:"flags"`
	Key      Key        `json:"key"`
	Register Registered `json:"register"`
}

// Delivery is the count of what came: Text in a sentence, Ask what to ask the
// supplier for, Changed what the measured sizes changed.
type Delivery struct {
	Text      string   `json:"text"`
	Total     int      `json:"total"`
	Found     int      `json:"found"`
	Missing   int      `json:"missing"`
	Damaged   int      `json:"damaged"`
	Recut     int      `json:"recut"`
	Measured  int      `json:"measured"`
	Unchecked int      `json:"unchecked"`
	Ask       []string `json:"ask"`
	Changed   []string `json:"changed"`
}

// Piece is several panels hung as one, or a piece cut loose from its
// neighbours: Kind is span, joined or loose, Cuts where it is cut from each.
type Piece struct {
	Name string     `json:"name"`
	Kind string     `json:"kind" is:"span|joined|loose"`
	Text string     `json:"text"`
	Cuts []PieceCut `json:"cuts"`
}

// PieceCut is where a loose piece is cut from one panel.
type PieceCut struct {
	Panel string `json:"panel"`
	Text  string `json:"text"`
}

// Station is one place of the platform, with the panels hung from it.
type Station struct {
	N      int      `json:"n"`
	Text   string   `json:"text"`
	Panels []string `json:"panels"`
}

// Restart is what to do about a panel that is up crooked: Down are the panels
// that come down, in that order.
type Restart struct {
	Text string   `json:"text"`
	Down []string `json:"down"`
}

// Gap is one seam while hanging: planned, as measured ("" where it is not),
// and what to set it to now. At is the pointer of the measured gap, or "".
// Offers are a handful of likely gaps to choose from.
type Gap struct {
	Seam     string   `json:"seam"`
	At       string   `json:"at"`
	Planned  string   `json:"planned"`
	Measured string   `json:"measured"`
	Set      string   `json:"set"`
	Text     string   `json:"text"`
	Offers   []string `json:"offers"`
}

// Bridge is the tape over one seam.
type Bridge struct {
	Seam   string `json:"seam"`
	Pieces int    `json:"pieces"`
	Length string `json:"length"`
	Text   string `json:"text"`
}

// Key is the panel kept up for the next layer: Chosen by "tool" or "user",
// Reason why, Lies the panels of the next layer that lie on it, Touches those
// set against it, Down when it comes down, Masked what it covers until then.
type Key struct {
	Panel   string   `json:"panel"`
	Chosen  string   `json:"chosen" is:"tool|user|"`
	Reason  string   `json:"reason"`
	Lies    []string `json:"lies"`
	Touches []string `json:"touches"`
	Down    string   `json:"down"`
	Masked  string   `json:"masked"`
}

// Registered is how this layer lies on the one before, from measured marks.
// Verdict is pass, fail, unsure or "" where nothing was measured.
type Registered struct {
	Text    string   `json:"text"`
	Verdict string   `json:"verdict" is:"pass|fail|unsure|"`
	Shift   string   `json:"shift"`
	Turn    string   `json:"turn"`
	Marks   []MarkAt `json:"marks"`
	Remedy  []string `json:"remedy"`
}

// MarkAt is one measured mark and how far it is off after the best fit.
type MarkAt struct {
	Name string `json:"name"`
	Text string `json:"text"`
}

// Size is one panel size along the length (columns) or the width (rows).
type Size struct {
	Text  string `json:"text"`
	Other string `json:"other"`
}

// Panel is one panel; Column and Row count from 1 at corner A, Order is its
// turn in hanging. Cut says where to cut it for the fixture, "" where the
// fixture is not on it. Supplier is its label on the delivery, State what the
// count found, Measured its size as delivered, Piece the piece it belongs to.
type Panel struct {
	Label  string `json:"label"`
	Column int    `json:"column"`
	Row    int    `json:"row"`
	Size   string `json:"size"`
	Order  int    `json:"order"`
	Cut    string `json:"cut"`

	Supplier string `json:"supplier"`
	State    string `json:"state"`
	Measured string `json:"measured"`
	Piece    string `json:"piece"`
}

// Hang is one step of hanging: which panel, and what each of its edges is set
// to. Text is the step as a sentence, Brief what its edges are set to in one line of
// signs, each behind the wall it faces; Mind the part of Text that is to be known before
// the step is done, "" for most. Station is the platform's place it is hung from, 0 where
// none is known; Measures the distances that place it; View the part of the layer's
// drawing round it, as an SVG viewBox; Up whether it is up already.
type Hang struct {
	N        int       `json:"n"`
	Panel    string    `json:"panel"`
	Set      []EdgeSet `json:"set"`
	Text     string    `json:"text"`
	Brief    string    `json:"brief"`
	Mind     string    `json:"mind"`
	Station  int       `json:"station"`
	Measures []Measure `json:"measures"`
	View     string    `json:"view"`
	Up       bool      `json:"up"`
}

// Measure is one distance that places a panel. Sum is how it comes about, "" where
// it is as the plan has it.
type Measure struct {
	What string `json:"what"`
	Text string `json:"text"`
	Sum  string `json:"sum"`
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
