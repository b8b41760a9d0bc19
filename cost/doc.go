// Package cost answers what a remedy or a pump-out takes and what it costs:
// the scope as lines to buy, priced from the caller's own price book, with
// overhead, profit, tax and contingency; the range of that price; and which of
// several remedies costs least over the years, when that answer flips, and what
// waiting costs.
//
// # Money
//
// Money is decimal (github.com/shopspring/decimal) in one ISO 4217 currency. Each
// printed line is rounded to the currency's minor unit and the total is the sum
// of the printed lines, so that a person who adds up the page gets the total.
// Discount factors are float64; a present value is rounded to the minor unit
// when it leaves.
//
// # Years
//
// Costs fall at the year they are paid; upkeep is paid at the end of each year;
// year 0 is today. A renewal that falls due on the last day of a period is not
// part of it. Rate and escalation are both real (prices of today) or both
// nominal (money of the day), never mixed.
//
// # Not known
//
// A price that the book does not have leaves its line without an amount and the
// estimate incomplete, and says which: it is never 0. How long a patch lasts
// nobody knows as a chance: it is given as a good, a usual and a bad case.
//
// # What it refuses
//
// Amounts beyond 1e12, units outside UN/CEFACT Recommendation 20, prices in
// another currency than the estimate's, and a margin of 100 % or more.
//
// # Sources
//
//	NIST Handbook 135; ASTM E917, E1057, E1074, E1121   factors, present and annual value, residual life, payback
//	ISO 4217; UN/CEFACT Recommendation 20                minor units; unit codes
//	Storm; Page; NAVFAC P-405; Dagostino and Peterson    labour hours, waste
//	FM 5-434; ASTM A615                                  soil volumes; bars
//	Fowler                                               sharing out cents
package cost
