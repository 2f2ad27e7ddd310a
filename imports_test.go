package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// levels reads the table of DEVELOPERS.md: the level of each package it names.
func levels(t *testing.T) map[string]int {
	t.Helper()
	text, err := os.ReadFile("DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	row := regexp.MustCompile(`(?m)^\| (\d+) \| ([^|]*) \|`)
	name := regexp.MustCompile("`([a-z/]+)`")
	out := map[string]int{}
	for _, m := range row.FindAllStringSubmatch(string(text), -1) {
		level, _ := strconv.Atoi(m[1])
		for _, n := range name.FindAllStringSubmatch(m[2], -1) {
			out[n[1]] = level
		}
	}
	if len(out) < 20 {
		t.Fatalf("the table of levels in DEVELOPERS.md names only %d packages", len(out))
	}
	return out
}

// levelOf is the level of a package: its own, or that of the package it belongs to as app's widgets do.
func levelOf(levels map[string]int, pkg string) (level int, ok bool) {
	for ; pkg != "."; pkg = filepath.Dir(pkg) {
		if level, ok = levels[pkg]; ok {
			return level, true
		}
		if !strings.HasPrefix(pkg, "app/") {
			break
		}
	}
	return 0, false
}

// windowless are the packages of app that the commands and tests use without a window.
var windowless = map[string]bool{"app/command": true, "app/session": true, "app/journal": true, "app/guide": true}

func TestImportsPointToLowerLevels(t *testing.T) {
	levels := levels(t)
	packages := 0
	err := filepath.WalkDir(".", func(path string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() && (strings.HasPrefix(entry.Name(), ".") && path != "." || entry.Name() == "testdata" || path == "out") {
			return fs.SkipDir
		}
		pkg := filepath.ToSlash(filepath.Dir(path))
		if !strings.HasSuffix(path, ".go") || pkg == "." {
			return nil
		}
		packages++
		level, known := levelOf(levels, pkg)
		if !known {
			t.Errorf("DEVELOPERS.md does not say on which level %s is", pkg)
			return nil
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, imp := range file.Imports {
			name, _ := strconv.Unquote(imp.Path.Value)
			if strings.HasPrefix(name, "fyne.io/") && (level < levels["app"] || windowless[pkg]) {
				t.Errorf("%s imports %s, but must work without a window", path, name)
			}
			own, is := strings.CutPrefix(name, "strandway/")
			if !is || strings.HasSuffix(path, "_test.go") {
				continue
			}
			if below, _ := levelOf(levels, own); below > level {
				t.Errorf("%s, on level %d, imports %s, on level %d", path, level, own, below)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if packages == 0 {
		t.Error("no package was looked at")
	}
}
