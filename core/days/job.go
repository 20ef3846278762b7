package days

import (
	"strconv"

	"ceilingwright/core/finish"
	"ceilingwright/core/words"
)

// Job is what there is to do, in the order of the finish. Protect, Survey,
// TouchUp and Clear are minutes of one person's work, 0 where there is none.
// FilmAge is how many days paint ages before a mask is stuck to it, Painted when
// the paint was done that is there to begin with, 0 where it is old.
type Job struct {
	Protect, Survey, TouchUp, Clear int64
	Layers                          []Layer
	Steps                           []Step
	FilmAge                         int64
	Painted                         Moment
}

// Layer is the work of one layer of the mask, in minutes. Mark, Bridge and Peel
// are of one person; Hang is what those who hang it together take, Move of them
// the moves of the platform. Key is what peeling the panel kept up for the next
// layer takes, 0 where none is.
type Layer struct {
	ID, Name                            string
	Mark, Hang, Move, Bridge, Peel, Key int64
}

// Step is the work of one step of the finish. Layer is the index of the layer it
// goes through, −1 for none; Surface the surface it is on, "" for the ceiling.
// Labour is minutes of one person for one coat; Dry and Recoat minutes of
// drying. Apart tells that what it paints lies outside the masks, so that none
// is stuck to it. Of is the share of the openings of its layer that it goes into, in
// millionths, 0 where it goes into all or the plan does not say. A size has Tack and Open, the minutes until leaf can be laid and from
// then on, the reserve taken off, and Window, the same with it; Tested is when its
// first section was tried and found ready, 0 where it was not. The leaf on it has
// Gilders and Sections.
type Step struct {
	ID, Name           string
	Kind               finish.Kind
	Layer              int
	Surface            string
	Coats              int64
	Labour             int64
	Dry, Recoat        int64
	Apart              bool
	Of                 int64
	Tack, Open, Window int64
	Tested             Moment
	Gilders            int
	Sections           []Section
}

// Section is the work of one section of a gilding: minutes of one person to size
// it, and to lay the leaf.
type Section struct{ Size, Lay int64 }

// How many people do a piece of work together at most. A panel has two who hold
// it, a chalk line two ends. Common practice, no source.
const (
	atPanel   = 2
	atMarks   = 2
	atPeeling = 4
	atTidying = 4
)

// LeastPart is how many minutes of a coat, of tape or of touching up each has at
// least where more than two share it: two always can, one who cuts in and one who
// follows while the edge is wet. Common practice, no source.
const LeastPart = 30

// shared is how many share labour of so many minutes that is spread over the
// ceiling.
func shared(labour int64) int { return int(max(2, min(labour/LeastPart, mostShare))) }

// mostShare is more than any crew.
const mostShare = 100

// Act tells apart what is done to the ceiling, besides its coats.
type Act uint8

// What is done to a layer, and what is done to the ceiling at the end; Otherwise
// is any other work.
const (
	Otherwise Act = iota
	Marking
	Hanging
	Bridging
	Peeling
	TakingDown // the last key
	TouchingUp
)

// Origin is what a task comes from: the index of its step, or of its layer, −1
// for neither; Coat and Section count from 1, 0 for none.
type Origin struct {
	Step, Layer, Coat, Section int
	Work                       Act
}

// MostTasks is how many pieces of work can be planned: each is held against all
// others. A choice.
const MostTasks = 1000

// Tasks are the tasks of a job for so many people, each with its origin. Of more
// than MostTasks the first MostTasks + 1 are listed and no more. A layer
// is marked out, hung and bridged before the first step that goes through it,
// and peeled after its last, or where the steps say. What is on the ceiling
// follows in the order of the steps; what is on another surface goes on beside
// it. Layers that no step goes through are left out.
func (j *Job) Tasks(people int) ([]Task, []Origin) {
	l := listing{Job: j, people: max(1, people), last: make([]int, len(j.Layers)), state: make([]state, len(j.Layers)), sized: sized{step: -1}}
	l.size()
	l.chains = append(l.chains, chain{previous: -1})
	l.single("protect", words.Say("Protect"), j.Protect, atTidying)
	l.single("survey", words.Say("Measure"), j.Survey, 1)
	l.setUp = l.chains[0].previous
	for i := 0; i < len(j.Steps) && !l.isFull(); i++ {
		l.step(i)
	}
	if !l.isFull() {
		l.end()
	}
	return l.tasks[:min(len(l.tasks), MostTasks+1)], l.origins[:min(len(l.tasks), MostTasks+1)]
}

// state is how far a layer has come.
type state uint8

const (
	toHang state = iota
	hung
	peeled
)

// listing is the tasks of a job in the making.
type listing struct {
	*Job
	people  int
	tasks   []Task
	origins []Origin
	chains  []chain // the ceiling's first
	setUp   int     // the last task before anything is painted, −1 for none
	last    []int   // the last step through each layer, −1 for none
	state   []state
	keyUp   int64 // minutes to take down the key that is up
	sized   sized
}

// sized is the size that was laid last: its step, what it waits for, how many of its
// sections have their leaf, and the leaf on them that was laid last, −1 for none.
type sized struct {
	step, before, sections, laid int
	wet                          []wet
}

// chain is what follows one another on one surface. previous is the last task,
// wet the coats that are not yet known to be dry, painted those that are not yet
// known to be of age.
type chain struct {
	surface  string
	previous int
	wet      []wet
	painted  []int
}

// size makes room, and finds the last step through each layer.
func (l *listing) size() {
	for i := range l.last {
		l.last[i] = -1
	}
	count := 8 + 4*len(l.Layers)
	for i := range l.Steps {
		s := &l.Steps[i]
		count += int(min(max(1, s.Coats), MostTasks)) + 2*len(s.Sections)
		if s.Layer >= 0 {
			l.last[s.Layer] = i
		}
	}
	count = min(count, MostTasks+1)
	l.tasks, l.origins = make([]Task, 0, count), make([]Origin, 0, count)
}

// isFull tells that there are more tasks than can be planned.
func (l *listing) isFull() bool { return len(l.tasks) > MostTasks }

// wet is a coat that is not yet known to be dry, and into which openings it went.
type wet struct {
	Link
	layer int
	of    int64
}

// allOpenings are a million millionths.
const allOpenings = 1_000_000

// isApart tells whether a step goes into other openings of the layer than a coat: into
// the rest of them. The openings of two steps are told apart by their shares only, so
// any other two may be the same.
func (w *wet) isApart(s *Step) bool {
	return s != nil && s.Layer == w.layer && s.Of > 0 && w.of > 0 && s.Of+w.of == allOpenings && s.Of != w.of
}

func (l *listing) chain(surface string) *chain {
	for i := range l.chains {
		if l.chains[i].surface == surface {
			return &l.chains[i]
		}
	}
	l.chains = append(l.chains, chain{surface: surface, previous: l.setUp})
	return &l.chains[len(l.chains)-1]
}

// put adds a task to a chain. One that needs dry paint waits for the coats
// before it, but for those in other openings.
func (l *listing) put(c *chain, t Task, o Origin, dry bool) int {
	if c.previous >= 0 {
		t.After = append(t.After, Link{Task: c.previous, Wait: Follows})
	}
	if dry {
		var step *Step
		if o.Step >= 0 {
			step = &l.Steps[o.Step]
		}
		var apart []wet
		for _, coat := range c.wet {
			if coat.isApart(step) {
				apart = append(apart, coat)
			} else {
				t.After = append(t.After, coat.Link)
			}
		}
		c.wet = apart
	}
	l.tasks, l.origins = append(l.tasks, t), append(l.origins, o)
	c.previous = len(l.tasks) - 1
	return c.previous
}

// single is a task of the whole job; with no work it is left out.
func (l *listing) single(id string, name words.Text, labour int64, share int) {
	if labour > 0 {
		l.put(&l.chains[0], Task{ID: id, Name: name, Labour: labour, Share: share}, Origin{Step: -1, Layer: -1}, false)
	}
}

func (l *listing) step(i int) {
	s := &l.Steps[i]
	if s.Layer >= 0 && l.state[s.Layer] == toHang && s.Kind != finish.Peel {
		l.hang(s.Layer)
	}
	switch {
	case s.Kind == finish.Peel:
		l.peel(i)
		return
	case s.Kind == finish.LeafLaying && l.sizing(i) >= 0:
		l.gild(l.sizing(i), i)
	case s.Kind == finish.SizeCoat && l.leafOn(i) >= 0:
		return // sized section by section, with its leaf
	default:
		l.coats(i)
	}
	if s.Layer >= 0 && l.last[s.Layer] == i && l.state[s.Layer] == hung {
		l.takeDown(s.Layer, words.Say("Peel {layer}", words.Name("layer", l.Layers[s.Layer].Name)), "layer."+l.Layers[s.Layer].ID+".peel", Origin{Step: -1, Layer: s.Layer, Work: Peeling}, l.Layers[s.Layer].Peel)
	}
}

// sizing is the size that a leaf step is laid on; −1 where that is none.
func (l *listing) sizing(leaf int) int {
	if len(l.Steps[leaf].Sections) == 0 {
		return -1
	}
	return finish.SizeUnder(leaf, func(i int) (finish.Kind, string) { return l.Steps[i].Kind, l.Steps[i].Surface })
}

// leafOn is the first leaf that is laid section by section on a size, −1 for none.
func (l *listing) leafOn(size int) int {
	for i := size + 1; i < len(l.Steps); i++ {
		switch {
		case l.Steps[i].Surface != l.Steps[size].Surface:
		case l.Steps[i].Kind != finish.LeafLaying:
			return -1
		case l.sizing(i) == size:
			return i
		}
	}
	return -1
}

// hang is marking out, hanging and bridging a layer. The mask is stuck to paint
// that is dry and of age; the key of the layer before comes down with it.
func (l *listing) hang(layer int) {
	c, one := &l.chains[0], &l.Layers[layer]
	name := words.Name("layer", one.Name)
	l.state[layer] = hung
	if one.Mark > 0 {
		l.put(c, Task{ID: "layer." + one.ID + ".mark", Name: words.Say("Mark out for {layer}", name), Labour: one.Mark, Share: atMarks}, Origin{Step: -1, Layer: layer, Work: Marking}, true)
	}
	t := Task{ID: "layer." + one.ID + ".hang", Name: words.Say("Hang {layer}", name), Fixed: one.Hang + l.keyUp, Share: atPanel}
	l.keyUp = 0
	if l.Painted > 0 {
		t.NotBefore = l.Painted + Moment(l.FilmAge*Day)
	}
	if l.FilmAge > 0 {
		for _, coat := range c.painted {
			t.After = append(t.After, Link{Task: coat, Wait: Ages, Days: l.FilmAge})
		}
	}
	c.painted = nil
	if t.Fixed > 0 {
		l.put(c, t, Origin{Step: -1, Layer: layer, Work: Hanging}, true)
	}
	if one.Bridge > 0 {
		l.put(c, Task{ID: "layer." + one.ID + ".bridge", Name: words.Say("Bridge the seams of {layer}", name), Labour: one.Bridge, Share: shared(one.Bridge)}, Origin{Step: -1, Layer: layer, Work: Bridging}, false)
	}
}

// peel is a step that peels its layer, or the one that is up.
func (l *listing) peel(i int) {
	s := &l.Steps[i]
	layer := s.Layer
	for j := range l.state {
		if layer < 0 && l.state[j] == hung {
			layer = j
		}
	}
	if layer < 0 || l.state[layer] != hung {
		return
	}
	labour := s.Labour
	if labour == 0 {
		labour = l.Layers[layer].Peel
	}
	l.takeDown(layer, words.Verbatim(s.Name), "step."+s.ID, Origin{Step: i, Layer: layer, Work: Peeling}, labour)
}

// takeDown peels a layer, at once after what was done last: paint is peeled wet
// or just dry to the touch, leaf while its size is soft (common practice, no
// source). The key stays up until the next layer hangs.
func (l *listing) takeDown(layer int, name words.Text, id string, o Origin, labour int64) {
	l.state[layer] = peeled
	l.keyUp = l.Layers[layer].Key
	if labour > 0 {
		l.put(&l.chains[0], Task{ID: id, Name: name, Labour: labour, Share: atPeeling}, o, false)
	}
}

// coats are the coats of a step. What is no paint is done once.
func (l *listing) coats(i int) {
	s := &l.Steps[i]
	c := l.chain(s.Surface)
	if s.Labour <= 0 {
		return
	}
	wait, count := Dries, max(1, s.Coats)
	for coat := int64(1); coat <= count && !l.isFull(); coat++ {
		t := Task{ID: "step." + s.ID, Name: words.Verbatim(s.Name), Labour: s.Labour, Share: shared(s.Labour), Whole: s.Kind.IsLiquid() && s.Kind != finish.EdgeSeal}
		if s.Kind == finish.LeafLaying && s.Gilders > 0 {
			t.Share = s.Gilders
		}
		if count > 1 {
			t.ID += "." + words.Digits(coat)
			t.Name = s.coat(coat, count)
		}
		task := l.put(c, t, Origin{Step: i, Layer: s.Layer, Coat: int(coat)}, true)
		if !s.Kind.IsLiquid() {
			return
		}
		dry := s.Dry
		if wait = Dries; coat < count {
			wait, dry = Recoats, s.Recoat
		}
		if dry > 0 {
			c.wet = append(c.wet, wet{Link{Task: task, Wait: wait, Minutes: dry}, s.Layer, s.Of})
		}
		if coat == count && !s.Apart {
			c.painted = append(c.painted, task)
		}
	}
}

// coat is a coat of a step, of several.
func (s *Step) coat(coat, of int64) words.Text {
	return words.Say("{step}, coat {n} of {all}", words.Name("step", s.Name), words.Name("n", words.Digits(coat)), words.Name("all", words.Digits(of)))
}

// section is a section of a step, or the step where it is the only one.
func (s *Step) section(section, of int) words.Text {
	if of < 2 {
		return words.Verbatim(s.Name)
	}
	return words.Say("{step}, section {n}", words.Name("step", s.Name), words.Name("n", words.Digits(int64(section))))
}

// SizedMeanwhile tells whether one of those who lay leaf has to size the next
// section while they lay one: nobody else is there, and size that comes to tack in
// so many minutes, sized before they begin, would be ready before they are done.
func SizedMeanwhile(people, gilders int, tack, laying int64) bool {
	return people <= gilders && tack < laying
}

func (l *listing) isMeanwhile(size *Step, gilders int, before Section) bool {
	return SizedMeanwhile(l.people, gilders, size.Tack, (before.Lay+int64(gilders)-1)/int64(gilders))
}

// gild is sizing and leaf, section by section. Where there is a hand more than
// the gilders, it sizes the next section while they lay; else one of them does,
// before they begin to lay or while they do, and the time of it is then theirs. A
// second leaf on the same size has sections of its own.
func (l *listing) gild(sizeStep, leafStep int) {
	size, leaf := &l.Steps[sizeStep], &l.Steps[leafStep]
	c := l.chain(leaf.Surface)
	if l.sized.step != sizeStep {
		l.sizeBefore(c, sizeStep)
		l.sized = sized{step: sizeStep, before: c.previous, laid: -1, wet: c.wet}
	}
	on, all := &l.sized, l.sectionsOn(sizeStep)
	gilders := max(1, min(leaf.Gilders, l.people))
	for k, section := range leaf.Sections {
		if l.isFull() {
			break
		}
		on.sections++
		o := Origin{Step: sizeStep, Layer: size.Layer, Section: on.sections}
		sizing := Task{ID: "step." + size.ID + ".s" + strconv.Itoa(on.sections), Name: size.section(on.sections, all), Labour: section.Size, Share: 1, Whole: true}
		sizing.Aside = k > 0 && l.isMeanwhile(size, gilders, leaf.Sections[k-1])
		c.previous, c.wet = on.before, on.wet
		at := l.put(c, sizing, o, true)
		t := Task{ID: "step." + leaf.ID + ".s" + strconv.Itoa(k+1), Name: leaf.section(k+1, len(leaf.Sections)), Labour: section.Lay, Share: gilders, Window: &Window{Sizing: at, Tack: size.Tack, Open: size.Open}}
		if k+1 < len(leaf.Sections) && l.isMeanwhile(size, gilders, section) {
			// The sizing in between is taken out of the reserve.
			next := leaf.Sections[k+1].Size
			t.Labour += next
			t.Window.Open = max(size.Open, min(size.Window, size.Open+(next+int64(gilders)-1)/int64(gilders)))
		}
		t.After = []Link{{Task: at, Wait: Tacks, Minutes: size.Tack}}
		if on.sections == 1 && size.Tested > 0 {
			t.Window.Tested, t.After[0].Minutes = size.Tested, 0
		}
		if on.laid >= 0 {
			t.After = append(t.After, Link{Task: on.laid, Wait: Follows})
		}
		l.tasks, l.origins = append(l.tasks, t), append(l.origins, Origin{Step: leafStep, Layer: leaf.Layer, Section: k + 1})
		on.laid = len(l.tasks) - 1
	}
	c.previous = on.laid
	c.painted = append(c.painted, on.laid)
}

// sectionsOn is how many sections of a size have leaf laid on them.
func (l *listing) sectionsOn(size int) (sections int) {
	for i := size + 1; i < len(l.Steps); i++ {
		if s := &l.Steps[i]; s.Kind == finish.LeafLaying && l.sizing(i) == size {
			sections += len(s.Sections)
		}
	}
	return sections
}

// sizeBefore are the coats of size before the one that leaf is laid on: each is
// laid all over and dries (best work was sized two or three times, The Artist's
// Assistant, 1785).
func (l *listing) sizeBefore(c *chain, i int) {
	s := &l.Steps[i]
	for coat := int64(1); coat < s.Coats && s.Labour > 0 && !l.isFull(); coat++ {
		task := l.put(c, Task{ID: "step." + s.ID + "." + words.Digits(coat), Name: s.coat(coat, s.Coats), Labour: s.Labour, Share: shared(s.Labour), Whole: true},
			Origin{Step: i, Layer: s.Layer, Coat: int(coat)}, true)
		if s.Recoat > 0 {
			c.wet = append(c.wet, wet{Link{Task: task, Wait: Recoats, Minutes: s.Recoat}, s.Layer, s.Of})
		}
	}
}

// end is touching up, once all is dry, and clearing away.
func (l *listing) end() {
	c := &l.chains[0]
	for i := range l.chains[1:] {
		other := &l.chains[i+1]
		if other.previous >= 0 && other.previous != l.setUp {
			c.wet = append(c.wet, other.wet...)
			c.wet = append(c.wet, wet{Link: Link{Task: other.previous, Wait: Follows}})
		}
	}
	if l.keyUp > 0 {
		l.put(c, Task{ID: "key", Name: words.Say("Take down the last key"), Labour: l.keyUp, Share: 1}, Origin{Step: -1, Layer: -1, Work: TakingDown}, false)
	}
	if l.TouchUp > 0 {
		l.put(c, Task{ID: "touch-up", Name: words.Say("Touch up"), Labour: l.TouchUp, Share: shared(l.TouchUp)}, Origin{Step: -1, Layer: -1, Work: TouchingUp}, true)
	}
	if l.Clear > 0 {
		for i := range c.wet {
			c.wet[i].Wait, c.wet[i].Minutes = Follows, 0
		}
		l.put(c, Task{ID: "clear", Name: words.Say("Clear away"), Labour: l.Clear, Share: atTidying}, Origin{Step: -1, Layer: -1}, true)
	}
}
