package command

import "fmt"

var check = command{
	name:    "check",
	use:     "FILE",
	summary: "work every piece for every size and say what is wrong",
	detail: "Each finding is a line FILE:LINE:COLUMN: GRADE: ROW: what is so (what to do), with the line and a\n" +
		"caret under the word. Grades are fault, to think about and note; only faults give exit status 1.",
	run: runCheck,
}

func runCheck(c *call) error {
	c.options()
	path, err := c.file()
	if err != nil {
		return err
	}
	src, err := c.open(path)
	if err != nil {
		return err
	}
	// What is wrong for every size is said once.
	type told struct {
		piece, id, message string
		at                 int
	}
	met := map[told]bool{}
	found := 0
	var worst error
	for size := range max(1, len(src.pattern.Sizes)) {
		name := ""
		if len(src.pattern.Sizes) > 0 {
			name = src.pattern.Sizes[size].Name
		}
		worked, err := src.work(name)
		if err != nil {
			return err
		}
		list := worked.Findings[:0:0]
		for _, f := range worked.Findings {
			key := told{f.Piece, f.ID, f.Message, f.Span.Start}
			if met[key] {
				continue
			}
			met[key] = true
			if size > 0 {
				f.Message = fmt.Sprintf("size %s: %s", name, f.Message)
			}
			list = append(list, f)
		}
		found += len(list)
		if err := src.findings(c.stdout, worked, list); err != nil {
			worst = err
		}
	}
	if found == 0 {
		fmt.Fprintf(c.stdout, "%s: nothing to say\n", path)
	}
	return worst
}
