# cutbinder: "make demo" makes the sample binder, "make test" runs the tests.
GO ?= go
DEMO = testdata/plans/lantern-row.yaml

build:
	$(GO) build -o bin/cutbinder ./cmd/cutbinder

demo: build
	mkdir -p build
	bin/cutbinder make $(DEMO) -o build/lantern-row.pdf

test:
	$(GO) test ./...

check:
	.ci/run

# The README's pictures, drawn by the program itself.
gallery: build
	bin/cutbinder picture $(DEMO) --page 1 --width 480 -o testdata/gallery/cover.png
	bin/cutbinder picture $(DEMO) --page 2 --width 480 -o testdata/gallery/shopping.png
	bin/cutbinder picture $(DEMO) --page 8 --width 720 -o testdata/gallery/fabric.png
	bin/cutbinder picture testdata/plans/harbour-steps.yaml --page 7 --width 480 -o testdata/gallery/fat-quarters.png
	bin/cutbinder picture testdata/plans/blocks/sampler.yaml --page 14 --width 480 -o testdata/gallery/blocks.png
	bin/cutbinder picture testdata/plans/blocks/sampler.yaml --page 17 --width 480 -o testdata/gallery/labels.png

bench: build
	$(GO) test -run '^$$' -bench . -benchmem ./...
	$(GO) run ./cmd/cutbench --summary

.PHONY: build demo test check gallery bench
