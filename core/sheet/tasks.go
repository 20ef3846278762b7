package sheet

// Days is the calendar. Tasks are in the order they begin; Waits the reasons
// for every wait, Saves what more people or longer days would save.
type Days struct {
	Text   string   `json:"text"`
	Start  string   `json:"start"`
	Finish string   `json:"finish"`
	Tasks  []Task   `json:"tasks"`
	Waits  []string `json:"waits"`
	Saves  []string `json:"saves"`
}

// Task is one piece of work, drying or waiting. At is the pointer of what it
// comes from; Day, From and To are as shown, Start and End as
// 2027-03-01T08:00; Labour the hours of work in it; Reason why it begins when
// it does; Sum how its end comes about; Critical tells that the finish moves with it.
// Kind is work, dry or wait.
type Task struct {
	ID       string `json:"id"`
	Name     string `json:"name"`
	At       string `json:"at"`
	Kind     string `json:"kind" is:"work|dry|wait"`
	Day      string `json:"day"`
	From     string `json:"from"`
	To       string `json:"to"`
	Start    string `json:"start"`
	End      string `json:"end"`
	Labour   string `json:"labour"`
	Reason   string `json:"reason"`
	Sum      string `json:"sum"`
	Critical bool   `json:"critical"`
}
