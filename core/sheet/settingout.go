package sheet

// Choice is one way to place the mask: On, Square and Turned are the plan's
// words for it, Taken whether the plan takes it, Borders the border at each
// wall (the smaller of its two ends), Ends and Sides by how much opposite
// borders differ. Places are the borders at both ends of each wall and Tapers
// how far a border widens along its wall; both are empty where every border
// is the same at both ends. Recommended marks the one to take, Reason says why
// or what speaks against it. Refused says why it cannot be had.
type Choice struct {
	On          string   `json:"on"`
	Square      string   `json:"square"`
	Turned      string   `json:"turned"`
	Title       string   `json:"title"`
	Taken       bool     `json:"taken"`
	Recommended bool     `json:"recommended"`
	Reason      string   `json:"reason"`
	Borders     Borders  `json:"borders"`
	Places      []Border `json:"places"`
	Tapers      []Taper  `json:"tapers"`
	Ends        string   `json:"ends"`
	Sides       string   `json:"sides"`
	Refused     string   `json:"refused"`
}

// Border is the border at one corner of the box, square to a wall.
type Border struct {
	Corner string `json:"corner"`
	Wall   string `json:"wall"`
	Text   string `json:"text"`
}

// Taper is how far the border along a wall widens from one end to the other,
// as a sentence.
type Taper struct {
	Wall string `json:"wall"`
	Text string `json:"text"`
}

// Borders is the border at each wall, as text.
type Borders struct {
	AB string `json:"AB"`
	BC string `json:"BC"`
	CD string `json:"CD"`
	DA string `json:"DA"`
}

// BoxPlace is where the box lies: Text in a sentence, Line what is struck or
// taped round it, Corners each corner from the walls, Lines every line to
// strike with both its ends.
type BoxPlace struct {
	Text    string      `json:"text"`
	Line    string      `json:"line"`
	Corners []BoxCorner `json:"corners"`
	Lines   []Strike    `json:"lines"`
}

// BoxCorner is one corner of the box and how it is found from the room.
type BoxCorner struct {
	Corner string `json:"corner"`
	Text   string `json:"text"`
}

// Strike is one line to strike between two walls. Kind is box, centre or seam.
type Strike struct {
	Name  string `json:"name"`
	Kind  string `json:"kind"`
	Layer string `json:"layer"`
	Text  string `json:"text"`
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
// out ("0.32 mm more"), "" for none. Exact is in whole nanometres. Join says
// where the other end of this line is, "" where both walls read alike. Sum is how
// the mark comes about, "" where it was measured.
type Mark struct {
	Kind  string `json:"kind"`
	Label string `json:"label"`
	Layer string `json:"layer"`
	Text  string `json:"text"`
	Other string `json:"other"`
	Exact string `json:"exact"`
	Hides string `json:"hides"`
	Join  string `json:"join"`
	Sum   string `json:"sum"`
}
