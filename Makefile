# make run    installs what the system lacks, builds, and opens the window on a sample
# make test   everything, the window under a virtual display included
# make bench  the benchmarks

GO     ?= go
SAMPLE ?= samples/groyne-runner.strand

# OpenGL ES builds five times as fast as desktop OpenGL; X11 alone needs no Wayland headers, and Wayland runs it too.
WINDOW_TAGS = gles,x11

# What builds and runs without cgo and without a display: all but the window.
PLAIN = . ./assets/... ./model/... ./chart/... ./render/... ./samples/... ./app/command/...

.PHONY: run test bench go window headless pictures

run: go
ifeq ($(DISPLAY),)
	@echo "There is no display here, so the window stays shut: chart and cloth of $(SAMPLE) go into out/."
	@$(MAKE) --no-print-directory pictures
else
	@sh .ci/install window
	@$(MAKE) --no-print-directory window
	@./strandway $(SAMPLE) || { \
		echo "The window cannot be shown on display $(DISPLAY): chart and cloth of $(SAMPLE) go into out/."; \
		$(MAKE) --no-print-directory pictures; }
endif

window:
	$(GO) build -tags $(WINDOW_TAGS) -o strandway .

headless:
	CGO_ENABLED=0 $(GO) build -tags headless -o out/strandway .

# The main job without a window: chart and cloth of the sample.
pictures: headless
	out/strandway chart $(SAMPLE) -o out/chart.svg
	out/strandway chart $(SAMPLE) -o out/chart.png
	out/strandway cloth $(SAMPLE) -o out/cloth.png
	@ls out/chart.svg out/chart.png out/cloth.png

test: go
	@sh .ci/install window test
	@unformatted=$$(gofmt -l .); test -z "$$unformatted" || { echo "not formatted: $$unformatted"; exit 1; }
	CGO_ENABLED=0 $(GO) vet -tags headless $(PLAIN)
	CGO_ENABLED=0 $(GO) vet -tags ci ./app/...
	$(MAKE) pictures
	CGO_ENABLED=0 $(GO) test -tags headless $(PLAIN)
	CGO_ENABLED=0 $(GO) test -tags ci $$(CGO_ENABLED=0 $(GO) list -tags ci ./app/... | grep -v /command$$)
	$(MAKE) window
	sh .ci/window ./strandway $(SAMPLE)
	sh .ci/piece ./strandway out

bench: go
	CGO_ENABLED=0 $(GO) test -tags headless -run '^$$' -bench . -benchmem $(PLAIN)

go:
	@have=$$($(GO) env GOVERSION 2>/dev/null || echo none); \
	test "$$(printf 'go1.26\n%s\n' "$$have" | sort -V | head -n 1)" = go1.26 && test "$$have" != none || { \
		echo "Go 1.26 or newer is needed, and here is $$have: see https://go.dev/doc/install (a distribution's own package may be older)" >&2; exit 1; }
