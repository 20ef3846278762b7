package sheet

// Advice is one safety note. At is the blank of the plan it hangs on, Figures
// the ids of the figures it speaks of, Working the numbers it went by, Bites the
// blocks in which it has to be seen too: "room", "hanging", "finish", "days". Also
// are the ids of the rules told together with it. OnDemand tells that it need not
// be seen before it is asked for.
type Advice struct {
	ID           string   `json:"id"`
	Also         []string `json:"also"`
	Severity     string   `json:"severity" is:"stop|caution|note"`
	Words        string   `json:"words"`
	Decides      string   `json:"decides"`
	Source       string   `json:"source"`
	Jurisdiction string   `json:"jurisdiction"`
	At           string   `json:"at"`
	Figures      []string `json:"figures"`
	Working      string   `json:"working"`
	Bites        []string `json:"bites"`
	OnDemand     bool     `json:"onDemand"`
}

// Question asks for what nobody has said yet and safety turns on. At is the blank
// of the plan, Rules are the ids of the safety rules that wait for the answer.
type Question struct {
	At    string   `json:"at"`
	Words string   `json:"words"`
	Rules []string `json:"rules"`
}

// VOCLine is what a product may hold where its VOC is limited, and what it holds
// as the plan uses it. Rule says whose limit it is and how it counts. Verdict is
// "within", "above" or "unknown"; Text says what that means or what to fill in.
// AsOf says which table, and of what day; Source where it was read and how far
// it was checked.
type VOCLine struct {
	Step     string `json:"step"`
	At       string `json:"at"`
	Category string `json:"category"`
	Rule     string `json:"rule"`
	Holds    string `json:"holds"`
	Limit    string `json:"limit"`
	Verdict  string `json:"verdict" is:"within|above|unknown"`
	Text     string `json:"text"`
	Source   string `json:"source"`
	AsOf     string `json:"asOf"`
}

// Air is what is in the air of the room over the days, as a screening figure.
type Air struct {
	Text string `json:"text"`
}

// Platform is what the work is done from. Kind is "floor", "hop-up", "podium",
// "tower" or "scaffold", "" where nothing is known; Text what to ask for, Why the
// reason, Refused why not something else, Hire the days it is needed.
type Platform struct {
	Kind     string            `json:"kind" is:"floor|hop-up|podium|tower|scaffold|"`
	Text     string            `json:"text"`
	Why      string            `json:"why"`
	Refused  []string          `json:"refused"`
	Hire     string            `json:"hire"`
	Stations []PlatformStation `json:"stations"`
	Checks   []PlatformCheck   `json:"checks"`
	Overhead []Overhead        `json:"overhead"`
}

// PlatformStation is what there is to say of a place of the platform: Layer is
// the id of the layer, N its number in that layer. Clash tells that the platform
// cannot stand there.
type PlatformStation struct {
	Layer string `json:"layer"`
	N     int    `json:"n"`
	Text  string `json:"text"`
	Clash bool   `json:"clash"`
}

// PlatformCheck is one thing the platform has and one it needs. Verdict is ok,
// short or unknown.
type PlatformCheck struct {
	What    string `json:"what"`
	Have    string `json:"have"`
	Need    string `json:"need"`
	Verdict string `json:"verdict" is:"ok|short|unknown"`
	Text    string `json:"text"`
}

// Overhead is the time one person has the hands above the head on a day. Over
// tells that it is more than two hours.
type Overhead struct {
	Day  string `json:"day"`
	Text string `json:"text"`
	Over bool   `json:"over"`
}
