// Command trial does what needs the tables of the Go runtime: panics of every
// kind and recovering from them, deferred calls, stacks that grow with pointers
// in them, forced collections, goroutines, maps, calls by reflection. It prints
// what came of it, the same wherever it runs.
package main

import (
	"errors"
	"fmt"
	"reflect"
	"runtime"
	"slices"
	"strings"
	"sync"
	"time"
)

func main() {
	for _, part := range []struct {
		name string
		try  func() string
	}{
		{"panics", panics}, {"wrapper", wrapper}, {"recover only where it may", places}, {"defer", deferred}, {"deep", deep},
		{"collection", collection}, {"goroutines", goroutines}, {"goexit", goexit}, {"maps", maps}, {"reflection", reflection},
		{"cleanups", cleanups}, {"counted", counted},
	} {
		fmt.Println(part.name+":", part.try())
	}
}

// caught is the text of the panic that do ends in.
func caught(do func()) (text string) {
	defer func() {
		switch p := recover().(type) {
		case nil:
			text = "no panic"
		case runtime.Error:
			text = "runtime: " + p.Error()
		case error:
			text = "error: " + p.Error()
		default:
			text = fmt.Sprint("value: ", p)
		}
	}()
	do()
	return ""
}

type pair struct{ a, b *int }

var (
	none   []int
	zero   int
	absent *pair
	unset  map[string]int
	thing  any = "text"
)

func panics() string {
	return strings.Join([]string{
		caught(func() { none[len(none)+3]++ }),
		caught(func() { none = none[2:] }),
		caught(func() { zero = 1 / zero }),
		caught(func() { *absent.a = 1 }),
		caught(func() { unset["a"] = 1 }),
		caught(func() { _ = thing.(int) }),
		caught(func() { _ = thing.(fmt.Stringer) }),
		caught(func() { none = make([]int, zero-1) }),
		caught(func() { panic("said so") }),
		caught(func() { panic(errors.New("an error")) }),
		caught(func() { panic(caught(func() { panic(7) })) }),
		caught(func() { var c chan int; close(c) }),
		caught(func() { defer func() { panic("again") }(); panic("first") }),
		caught(func() {}),
	}, "; ")
}

type namer interface{ Name() string }

type named struct{ text string }

var nobody = []namer{(*named)(nil)}

func (n named) Name() string { return n.text }

// wrapper calls a method of a value through a pointer that is nil: the runtime
// takes the name of the wrapper apart for the text.
func wrapper() string {
	return caught(func() { nobody[zero].Name() })
}

func helped() any { return recover() }

type guard struct{ seen *any }

func (g guard) done()   { *g.seen = recover() }
func (g *guard) leave() { *g.seen = recover() }

type leaver interface{ done() }

// places recovers where the language allows it and does not elsewhere: the
// runtime counts the calls in between, inlined ones too.
func places() string {
	var out []string
	try := func(name string, do func(seen *any)) {
		var seen any
		left := caught(func() { do(&seen) })
		out = append(out, fmt.Sprint(name, " ", seen, " ", left))
	}
	try("direct", func(seen *any) { defer func() { *seen = recover() }(); panic(1) })
	try("one too deep", func(seen *any) { defer func() { *seen = helped() }(); panic(2) })
	try("nested", func(seen *any) { defer func() { func() { *seen = recover() }() }(); panic(3) })
	try("method", func(seen *any) { defer guard{seen}.done(); panic(4) })
	try("pointer", func(seen *any) { g := &guard{seen}; defer g.leave(); panic(5) })
	try("interface", func(seen *any) { var l leaver = &guard{seen}; defer l.done(); panic(6) })
	try("method value", func(seen *any) { f := (&guard{seen}).done; defer f(); panic(7) })
	try("helper", func(seen *any) { defer helped(); panic(8) })
	return strings.Join(out, "; ")
}

func deferred() string {
	var order []int
	func() {
		defer func() { recover() }()
		for i := range 5 {
			defer func() { order = append(order, i) }()
		}
		defer func() {
			defer func() { order = append(order, 100+len(fmt.Sprint(recover()))) }()
			panic("inner")
		}()
		panic("outer")
	}()
	result := func() (n int) {
		defer func() { recover(); n *= 2 }()
		n = 21
		panic("result")
	}()
	return fmt.Sprint(order, result)
}

// down goes n calls deep, with pointers to the stack and to the heap in every
// frame, and collects on the way.
func down(n int, above *pair) int {
	value := n
	here := pair{&value, new(int)}
	*here.b = n * 2
	if n%2000 == 0 {
		runtime.GC()
	}
	if n == 0 {
		return 0
	}
	sum := down(n-1, &here)
	if above != nil && *above.b != 2**above.a {
		panic("a pointer into a stack was lost")
	}
	return sum + *here.a + *here.b - value*2
}

func deep() string {
	sum := make(chan int)
	go func() { sum <- down(8000, nil) }()
	fell := caught(func() { downAndOut(2000) })
	return fmt.Sprint(<-sum, " ", down(8000, nil), " ", fell)
}

func downAndOut(n int) {
	defer func() { zero = 0 }()
	if n == 0 {
		panic("at the bottom")
	}
	downAndOut(n - 1)
}

type tree struct {
	left, right *tree
	label       string
}

func grown(depth int) *tree {
	if depth == 0 {
		return &tree{label: strings.Repeat("x", 3)}
	}
	return &tree{grown(depth - 1), grown(depth - 1), fmt.Sprint(depth)}
}

func (t *tree) size() int {
	if t == nil {
		return 0
	}
	return len(t.label) + t.left.size() + t.right.size()
}

func collection() string {
	kept := grown(12)
	total := 0
	for i := range 20 {
		total += grown(8).size()
		if i%4 == 0 {
			runtime.GC()
		}
	}
	var seen runtime.MemStats
	runtime.ReadMemStats(&seen)
	return fmt.Sprint(kept.size(), " ", total, " ", seen.NumGC >= 5)
}

func goroutines() string {
	var done sync.WaitGroup
	var lock sync.Mutex
	total := 0
	for i := range 100 {
		done.Add(1)
		go func() {
			defer done.Done()
			local := grown(i % 6).size()
			runtime.Gosched()
			if i%20 == 0 {
				runtime.GC()
			}
			lock.Lock()
			defer lock.Unlock()
			total += local + down(i%40, nil)
		}()
	}
	done.Wait()
	ticks := make(chan int)
	go func() {
		for i := range 3 {
			time.Sleep(time.Millisecond)
			ticks <- i
		}
		close(ticks)
	}()
	for late := time.After(time.Minute); ; {
		select {
		case i, more := <-ticks:
			if !more {
				return fmt.Sprint(total)
			}
			total += i
		case <-late:
			return "late"
		}
	}
}

func goexit() string {
	left := make(chan string, 2)
	go func() {
		defer func() { left <- fmt.Sprint("recovered ", recover()) }()
		defer func() { left <- "deferred" }()
		runtime.Goexit()
	}()
	return <-left + ", " + <-left
}

func maps() string {
	words := map[string]*pair{}
	for i := range 5000 {
		n := i
		words[fmt.Sprint("word ", i)] = &pair{&n, nil}
		if i%1000 == 0 {
			runtime.GC()
		}
		if i%3 == 0 {
			delete(words, fmt.Sprint("word ", i/2))
		}
	}
	var left []int
	for _, p := range words {
		left = append(left, *p.a)
	}
	slices.Sort(left)
	unhashable := caught(func() { _ = map[any]int{}[[]int{1}] })
	return fmt.Sprint(len(left), " ", left[:5], " ", unhashable)
}

type adder struct{ by *int }

func (a adder) Add(n *int) *int {
	runtime.GC()
	sum := *n + *a.by
	down(200, nil)
	return &sum
}

// reflection calls through the two stubs whose pointers the collector finds by
// their names.
func reflection() string {
	by := 5
	method := reflect.ValueOf(adder{&by}).MethodByName("Add").Interface().(func(*int) *int)
	made := reflect.MakeFunc(reflect.TypeFor[func(*int, string) *int](), func(in []reflect.Value) []reflect.Value {
		runtime.GC()
		down(200, nil)
		n := len(in[1].String()) + int(in[0].Elem().Int())
		return []reflect.Value{reflect.ValueOf(&n)}
	}).Interface().(func(*int, string) *int)
	n := 37
	fails := caught(func() { reflect.ValueOf(func() { panic("called") }).Call(nil) })
	return fmt.Sprint(*method(&n), " ", *made(&n, "four"), " ", fails)
}

func cleanups() string {
	cleaned := make(chan int, 2)
	func() {
		a, b := &tree{label: "a"}, &tree{label: "b"}
		runtime.SetFinalizer(a, func(t *tree) { cleaned <- len(t.label) })
		runtime.AddCleanup(b, func(n int) { cleaned <- n }, 2)
	}()
	sum := 0
	for range 2 {
		runtime.GC()
		select {
		case n := <-cleaned:
			sum += n
		case <-time.After(time.Second):
			return "not cleaned up"
		}
	}
	return fmt.Sprint(sum)
}

// counted is whether no goroutine is left but this one and the one that, in a
// browser, waits for events: those of the runtime, which it knows by their
// names, are not among them.
func counted() string {
	for range 1000 {
		if runtime.NumGoroutine() <= 2 {
			break
		}
		time.Sleep(time.Millisecond)
	}
	return fmt.Sprint(runtime.NumGoroutine() <= 2)
}
