// Package machine finds the programs that tests and benches need and that are
// not Go: a browser, a screen for its window, and Node. On Debian, as root, it installs what is missing
// from the distribution; on any other machine it says in one sentence what to
// install. It never decides to go on without. Building and serving need none
// of it.
package machine

import (
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"strings"
)

// Tool is a program from outside.
type Tool struct {
	// Name is the word for it in messages.
	Name string
	// Variable is the environment variable that names another program to use.
	Variable string
	// Programs are the names it goes by, the first found is taken.
	Programs []string
	// Packages are the Debian packages that bring it.
	Packages []string
}

// Chromium is the browser.
func Chromium() Tool {
	return Tool{
		Name:     "Chromium",
		Variable: "CHROMIUM",
		Programs: []string{"chromium", "chromium-browser", "google-chrome", "google-chrome-stable"},
		Packages: []string{"chromium"},
	}
}

// Node runs the engine outside a browser.
func Node() Tool {
	return Tool{Name: "Node", Variable: "NODE", Programs: []string{"node", "nodejs"}, Packages: []string{"nodejs"}}
}

// NPM fetches what only the tests of the site's source need.
func NPM() Tool {
	return Tool{Name: "npm", Variable: "NPM", Programs: []string{"npm"}, Packages: []string{"npm"}}
}

// Display is a screen without a monitor, for what a browser does only in a
// window.
func Display() Tool {
	return Tool{Name: "Xvfb", Variable: "XVFB", Programs: []string{"Xvfb"}, Packages: []string{"xvfb"}}
}

// Keys presses keys in such a window, outside the page.
func Keys() Tool {
	return Tool{Name: "xdotool", Variable: "XDOTOOL", Programs: []string{"xdotool"}, Packages: []string{"xdotool"}}
}

// Find gives the path of the tool, or an error that says how to get it.
func (t Tool) Find() (string, error) {
	if named := os.Getenv(t.Variable); named != "" {
		path, err := exec.LookPath(named)
		if err != nil {
			return "", fmt.Errorf("%s names %q, which cannot be run: %w", t.Variable, named, err)
		}
		return path, nil
	}
	for _, name := range t.Programs {
		if path, err := exec.LookPath(name); err == nil {
			return path, nil
		}
	}
	return "", fmt.Errorf("%s is missing: install it (on Debian: apt-get install %s) or let %s name it",
		t.Name, strings.Join(t.Packages, " "), t.Variable)
}

// Ensure finds the tool, or installs it where that can be done. What the
// installer prints goes to log.
func (t Tool) Ensure(log io.Writer) (string, error) {
	path, missing := t.Find()
	if missing == nil {
		return path, nil
	}
	if os.Getenv(t.Variable) != "" || !canInstall() {
		return "", missing
	}
	fmt.Fprintf(log, "%s is missing; installing %s\n", t.Name, strings.Join(t.Packages, " "))
	if err := install(log, t.Packages); err != nil {
		return "", errors.Join(missing, err)
	}
	return t.Find()
}

// canInstall says whether this is a Debian machine that we may change.
func canInstall() bool {
	_, err := os.Stat("/etc/debian_version")
	return err == nil && os.Geteuid() == 0
}

func install(log io.Writer, packages []string) error {
	for _, arguments := range [][]string{
		{"update", "-q"},
		append([]string{"install", "-q", "-y", "--no-install-recommends"}, packages...),
	} {
		command := exec.Command("apt-get", arguments...)
		command.Env = append(os.Environ(), "DEBIAN_FRONTEND=noninteractive")
		command.Stdout, command.Stderr = log, log
		if err := command.Run(); err != nil {
			return fmt.Errorf("apt-get %s: %w", strings.Join(arguments, " "), err)
		}
	}
	return nil
}
