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

bench: build
	$(GO) test -run '^$$' -bench . -benchmem ./...
	$(GO) run ./cmd/cutbench --summary

.PHONY: build demo test check bench
