package main

import (
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"cutbinder/layout/pack"
)

// knownFile holds what was known of the instances before.
const knownFile = "known.csv"

// known is a value of each instance by column.
type known map[string]map[string]int64

// readKnown reads the file of known values; empty fields are left out.
func readKnown(file string) (known, error) {
	f, err := os.Open(file)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	if err != nil || len(lines) == 0 {
		return nil, fmt.Errorf("%s: no table: %v", file, err)
	}
	k := known{}
	for _, line := range lines[1:] {
		values := map[string]int64{}
		for i, name := range lines[0] {
			if v, err := strconv.ParseInt(line[i], 10, 64); err == nil {
				values[name] = v
			}
		}
		k[line[0]] = values
	}
	return k, nil
}

// A group sums up the instances of one source.
type group struct {
	name                 string
	n, proved            int
	gap                  float64 // sum over length to bound
	known, better, worse int
	off, most            float64 // sum and greatest excess over the best value known
	peer, ahead, behind  int
	seconds, longest     float64
}

// summarize prints a line for each source of instances, and for all.
func summarize(rows []row, folder string) error {
	k, err := readKnown(filepath.Join(folder, knownFile))
	if err != nil {
		return err
	}
	var groups []*group
	at := map[string]*group{}
	all := &group{name: "all"}
	for _, r := range rows {
		source, _, _ := strings.Cut(r.name, "_")
		if at[source] == nil {
			at[source] = &group{name: source}
			groups = append(groups, at[source])
		}
		best, peer := standard(r)
		for _, g := range []*group{at[source], all} {
			g.add(r, k[r.name][best], k[r.name][peer])
		}
	}
	slices.SortFunc(groups, func(a, b *group) int { return strings.Compare(a.name, b.name) })
	fmt.Println("source         n proved  gap_to_bound | known better worse mean_excess  most | peer ahead behind | seconds longest")
	for _, g := range append(groups, all) {
		fmt.Printf("%-12s %3d %6d %12.3f%% | %5d %6d %5d %10.3f%% %4.2f%% | %4d %5d %6d | %7.2f %7.2f\n",
			g.name, g.n, g.proved, 100*g.gap/float64(g.n), g.known, g.better, g.worse,
			100*g.off/float64(max(1, g.known)), 100*g.most, g.peer, g.ahead, g.behind, g.seconds, g.longest)
	}
	return nil
}

// standard names the columns to compare a row with: the best known value, and
// the peer's.
func standard(r row) (best, peer string) {
	switch {
	case r.kind != pack.Strips && r.turn:
		return "turned_best", "peer_stacks"
	case r.turn:
		return "turned_best", "peer_turned_10s"
	case r.kind == pack.Strips:
		return "oriented_best", "peer_oriented_10s"
	}
	return "oriented_best", ""
}

// add takes a row into account.
func (g *group) add(r row, best, peer int64) {
	g.n++
	if r.proved {
		g.proved++
	}
	g.gap += float64(r.length-r.bound) / float64(r.length)
	g.seconds += r.seconds
	g.longest = max(g.longest, r.seconds)
	if best > 0 {
		g.known++
		excess := float64(r.length-best) / float64(best)
		g.off += excess
		g.most = max(g.most, excess)
		g.better += count(r.length < best)
		g.worse += count(r.length > best)
	}
	if peer > 0 {
		g.peer++
		g.ahead += count(r.length < peer)
		g.behind += count(r.length > peer)
	}
}

// count is 1 for true.
func count(b bool) int {
	if b {
		return 1
	}
	return 0
}
