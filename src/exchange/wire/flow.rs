//! Money, slots, confirmations and the shop's settings as they are stored: amounts in whole minor
//! units, quantities as typed.

use crate::exchange::json::{Form, Json, Out, form};
use crate::job::entry::{
    Confirmation, DayTime, Discount, Held, Money, Shop, ShopRetorque, Slot, Template,
};
use crate::trade::money::{Billed, BilledLine, Estimate, Invoice, Line, TaxRule, TaxSum};

form!(Money { minor, currency });
form!(Estimate { lines, tax });
form!(Line {
    kind,
    text,
    quantity,
    each,
    taxed,
    rate,
    corner
});
form!(TaxSum { percent, net, tax });
form!(Invoice {
    number,
    credits,
    currency,
    parts
});
form!(Billed {
    of,
    what,
    corner,
    text,
    lines,
    taxes
});
form!(BilledLine {
    kind,
    text,
    quantity,
    each,
    net,
    percent
});
form!(Discount { amount, reason });
form!(TaxRule { percent, rounding });

form!(Slot { day, time, van });
form!(Confirmation { held });
form!(Held {
    log,
    device,
    through,
    count,
    digest
});

form!(Shop {
    name(few),
    contact(few),
    currency,
    tax,
    labour,
    warranty,
    share,
    retorque,
    keep_days,
    templates,
});
form!(ShopRetorque { after, days });
form!(Template { kind, lines });

/// `HH:MM`.
impl Form for DayTime {
    fn read(json: &Json<'_>) -> Option<Self> {
        Self::parse(&json.text()?)
    }

    fn write(&self, out: &mut Out) {
        out.text(&self.to_string());
    }
}

impl Form for Box<Invoice> {
    fn read(json: &Json<'_>) -> Option<Self> {
        Invoice::read(json).map(Self::new)
    }

    fn write(&self, out: &mut Out) {
        Invoice::write(self, out);
    }
}

impl Form for Box<Shop> {
    fn read(json: &Json<'_>) -> Option<Self> {
        Shop::read(json).map(Self::new)
    }

    fn write(&self, out: &mut Out) {
        Shop::write(self, out);
    }
}
