package sheet

// Survey is what the measuring of the room came to. Proved is "yes" where
// spare readings show the shape, "no" where they contradict it, "assumed"
// where nothing checks it; Text says so in words. Closing is by how much the
// readings fail to close, Again what to measure again.
type Survey struct {
	Form    string       `json:"form"`
	Proved  string       `json:"proved" is:"yes|no|assumed|"`
	Text    string       `json:"text"`
	Corners []RoomCorner `json:"corners"`
	Lines   []RoomLine   `json:"lines"`
	Closing string       `json:"closing"`
	Again   []string     `json:"again"`
}

// RoomCorner is one corner of the room with the angle between its walls. Out
// is how far it is out of square; Text both in a sentence.
type RoomCorner struct {
	Corner string `json:"corner"`
	Angle  string `json:"angle"`
	Out    string `json:"out"`
	Text   string `json:"text"`
}

// RoomLine is one reading of the tape: At its pointer, Read what was read
// (less where the tape began), Adjusted the line in the room as worked out,
// Off the difference in words. Flag is "check" on a reading to take again.
type RoomLine struct {
	At       string `json:"at"`
	Line     string `json:"line"`
	Read     string `json:"read"`
	Adjusted string `json:"adjusted"`
	Off      string `json:"off"`
	Flag     string `json:"flag"`
}

// Object is the light or an obstruction: At its pointer, Text where it is, and
// on which panels it falls.
type Object struct {
	At     string        `json:"at"`
	Name   string        `json:"name"`
	Kind   string        `json:"kind"`
	Text   string        `json:"text"`
	Panels []ObjectPanel `json:"panels"`
}

// ObjectPanel is the cut an object makes in one panel.
type ObjectPanel struct {
	Layer string `json:"layer"`
	Panel string `json:"panel"`
	Text  string `json:"text"`
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
