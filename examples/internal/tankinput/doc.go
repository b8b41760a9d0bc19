// Package tankinput reads a tank as the commands have it: its shape by kind and
// sizes, its walls and its partitions, from JSON, CSV and flags.
package tankinput
