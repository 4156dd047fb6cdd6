# cutbinder: "make demo" makes the sample binder, "make test" runs the tests.
GO ?= go
# The decoder of phones' photos is built in; it shall not look for another one on
# the machine.
export GOFLAGS := $(GOFLAGS) -tags=nodynamic
DEMO = testdata/plans/lantern-row.yaml

build:
	$(GO) build -o bin/cutbinder ./cmd/cutbinder

demo: build
	mkdir -p build
	bin/cutbinder make $(DEMO) -o build/lantern-row.pdf

test:
	$(GO) test ./...

# What a release must pass, with more random plans than a machine that waits for it
# has time for.
check:
	PLANS=5000 .ci/run

# The README's pictures, drawn by the program itself.
gallery: build
	bin/cutbinder picture $(DEMO) --page 1 --width 480 -o testdata/gallery/cover.png
	bin/cutbinder picture $(DEMO) --page 2 --width 480 -o testdata/gallery/shopping.png
	bin/cutbinder picture testdata/plans/orchard-gate.yaml --page 10 --width 720 -o testdata/gallery/fabric.png
	bin/cutbinder picture testdata/plans/harbour-steps.yaml --page 7 --width 480 -o testdata/gallery/fat-quarters.png
	bin/cutbinder picture testdata/plans/blocks/sampler.yaml --page 14 --width 480 -o testdata/gallery/blocks.png
	bin/cutbinder picture testdata/plans/blocks/sampler.yaml --page 16 --width 480 -o testdata/gallery/labels.png

bench: build
	$(GO) test -run '^$$' -bench . -benchmem ./...
	$(GO) run ./cmd/cutbench --summary testdata/cutting/*.csv
	$(GO) run ./cmd/cutbench --turn --summary testdata/cutting/*.csv
	$(GO) run ./cmd/photobench -n 1000 -seed 1

# Binaries for every system, the manual page, the schema and the completions, with
# checksums. The same commit and compiler give the same bytes, wherever they are built.
VERSION ?= $(shell git describe --tags --always --dirty 2>/dev/null || echo dev)
RELEASE = build/release
PLATFORMS = linux/amd64 linux/arm64 darwin/amd64 darwin/arm64 windows/amd64 windows/arm64

release:
	rm -rf $(RELEASE) && mkdir -p $(RELEASE)
	for p in $(PLATFORMS); do \
	  os=$${p%/*} arch=$${p#*/} end=; [ $$os != windows ] || end=.exe; \
	  CGO_ENABLED=0 GOOS=$$os GOARCH=$$arch $(GO) build -trimpath -buildvcs=false \
	    -ldflags '-s -w -buildid= -X main.Version=$(VERSION)' \
	    -o $(RELEASE)/cutbinder-$(VERSION)-$$os-$$arch$$end ./cmd/cutbinder || exit 1; \
	done
	$(GO) build -o bin/cutbinder -ldflags '-X main.Version=$(VERSION)' ./cmd/cutbinder
	bin/cutbinder man >$(RELEASE)/cutbinder.1
	bin/cutbinder schema >$(RELEASE)/plan.schema.json
	for s in bash zsh fish; do bin/cutbinder completion $$s >$(RELEASE)/completion.$$s || exit 1; done
	cd $(RELEASE) && sha256sum * >SHA256SUMS

.PHONY: build demo test check gallery bench release
