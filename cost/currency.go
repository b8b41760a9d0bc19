package cost

import (
	"strconv"
	"strings"

	"manway.example/manway"
)

// Currency is an ISO 4217 alphabetic code, such as USD. The zero value is no
// currency and is refused.
type Currency string

// Minor units by ISO 4217, List One: the decimal places of an amount. Codes
// without one, such as gold (XAU), are no currency to quote in.
const (
	minor2 = " AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD CDF CHE CHF CHW CNY COP COU CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MXV MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD USN UYU UZS VED VES WST XCD YER ZAR ZMW ZWG "
	minor0 = " BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF "
	minor3 = " BHD IQD JOD KWD LYD OMR TND "
	minor4 = " CLF UYW "
)

// MinorUnit is the number of decimal places of an amount in c: 2 for USD, 0 for
// JPY, 3 for KWD. Any other text than an active currency of ISO 4217 that has a
// minor unit is an error. Source: ISO4217.
func (c Currency) MinorUnit() (int, error) {
	if len(c) == 3 && !strings.Contains(string(c), " ") {
		code := " " + string(c) + " "
		for places, list := range [...]string{0: minor0, 2: minor2, 3: minor3, 4: minor4} {
			if list != "" && strings.Contains(list, code) {
				return places, nil
			}
		}
	}
	return 0, manway.InputErrors{{Field: "Currency", Value: strconv.Quote(clip(string(c))),
		Want: "an ISO 4217 code of a currency with a minor unit, such as USD"}}
}

// clip shortens text for an error message.
func clip(s string) string {
	if len(s) > 64 {
		return s[:64] + "…"
	}
	return s
}
