// Package cost answers what a remedy or a pump-out takes and costs: the scope as
// lines to buy, priced from the caller's own price book with overhead, profit, tax
// and contingency; the range of that price; and which of several remedies costs
// least over the years, when that answer flips, and what waiting costs.
//
// Money is decimal in one ISO 4217 currency. Each printed line is rounded to the
// minor unit, and the total is their sum. Discount factors are float64; a present
// value is rounded when it leaves. Costs fall at the year they are paid, upkeep at
// its end, year 0 is today. Rates are all real or all nominal.
//
// A price that the book does not have leaves its line without an amount and the
// estimate incomplete, and says which: it is never 0. How long a patch lasts
// nobody knows as a chance: it is given as a good, a usual and a bad case.
package cost
