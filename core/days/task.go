package days

import "ceilingwright/core/words"

// Wait is why one task comes so long after another.
type Wait uint8

// The waits. Follows is none: the task before only has to be done. Dries and
// Recoats are hours of drying before something else is done, or the next coat
// laid; Tacks the hours until leaf can be laid on size; Ages the days until a
// mask can be stuck to paint. Staffed and Matched are not asked for but found:
// those who do it are busy, or it is put off so that leaf meets its time.
const (
	Follows Wait = iota
	Dries
	Recoats
	Tacks
	Ages
	Staffed
	Matched
)

// Link says that a task begins only when another is done, and so many Minutes
// of elapsed time and Days of the calendar after that. Task is its index in the
// list, where it stands before the task that waits.
type Link struct {
	Task    int
	Wait    Wait
	Minutes int64
	Days    int64
}

// Window is the time in which leaf must be laid on size: Sizing is the index of
// the task that laid the size, Tack the minutes from its end until leaf can be
// laid, and Open the minutes from then on in which all of it has to be laid, the
// reserve already taken off. Leaf is laid in the order in which it was sized.
// Nothing but its leaf waits for a sizing. Tested is when the size was tried on
// the job and found ready, 0 where it was not: it counts in the place of Tack,
// where the size is laid by then.
type Window struct {
	Sizing     int
	Tack, Open int64
	Tested     Moment
}

// opens is when leaf can be laid on size that was done at sized; tested tells
// that it goes by the test.
func (w *Work) opens(window *Window, sized Instant) (at Instant, tested bool) {
	if window.Tested > 0 {
		if at = w.Zone.Instant(window.Tested); at >= sized {
			return at, true
		}
	}
	return sized + Instant(window.Tack), false
}

// Task is a piece of work. Labour is minutes of one person's work, which at
// most Share people do together; Fixed are minutes that more people do not
// shorten, such as moving the platform they stand on. Whole work is not stopped
// for a pause or the night unless it is longer than a day. A task that is Aside
// is done by people who are counted in another. It begins at NotBefore at the
// soonest, after the tasks of After, and where it has a Window, inside it.
type Task struct {
	ID        string
	Name      words.Text
	Labour    int64
	Share     int
	Fixed     int64
	Whole     bool
	Aside     bool
	NotBefore Moment
	After     []Link
	Window    *Window
}

// crew is how many of so many people do the task, and minutes how long they
// take.
func (t *Task) crew(people int) (crew int, minutes int64) {
	crew = max(1, min(t.Share, people))
	return crew, (t.Labour+int64(crew)-1)/int64(crew) + t.Fixed
}

// Work is all that has to be scheduled: the tasks, of which each is linked to
// earlier ones only, and by how many People from Start on. Round is the step in
// minutes to which the time of a task is rounded up, 0 for the minute; leaf on
// its size is not rounded, since its time is short.
type Work struct {
	Tasks  []Task
	People int
	Start  Date
	Hours  Hours
	Zone   Zone
	Round  int64
}

// Takes is how many people do a task and how long each of them is at it.
func (w *Work) Takes(task int) (crew int, minutes int64) { return w.takes(task) }

// takes is how many people do a task and how long they take.
func (w *Work) takes(task int) (crew int, minutes int64) {
	t := &w.Tasks[task]
	crew, minutes = t.crew(w.People)
	if rest := minutes % max(1, w.Round); rest > 0 && t.Window == nil {
		minutes += w.Round - rest
	}
	return crew, minutes
}
