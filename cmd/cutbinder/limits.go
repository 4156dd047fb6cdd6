package main

import "cutbinder/sheets"

// Limits on what is read and written. Those on what a plan may hold stand in
// layout/plan and layout/workbook; the manual tells them all.
const (
	maxPlan  = 4 << 20         // bytes of a plan's file
	maxFont  = 32 << 20        // bytes of a face
	maxFiles = 50              // comma-separated files in a folder
	maxPages = sheets.MaxPages // of a document
)

// memory is how much the program keeps before it collects what it no longer needs
// more often, in bytes.
const memory = 512 << 20
