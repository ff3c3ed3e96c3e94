package rule

import (
	"strings"

	"baybook/site/check"
)

var ownApproval = &check.Rule{
	Name: "own-approval",
	Doc: `Somebody else approves

Whoever owns a sheet reads past its faults. A second person approves it, unless
the shop has only one: own_approval: true in shop.yaml allows it then.`,
	Check: func(p *check.Pass) {
		front := &p.Sheet.Front
		if by := front.Approved.By; by != "" && !p.Book.Shop.OwnApproval && strings.EqualFold(by, front.Owner) {
			p.Report(front.Place("approved"), by+" owns the sheet and approved it", "have somebody else approve it, or write own_approval: true in shop.yaml")
		}
	},
}
