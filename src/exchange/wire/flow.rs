//! Money, slots, confirmations and the shop's settings as they are stored: amounts in whole minor
//! units, quantities as typed.

use crate::exchange::json::{Form, Json, Out, form};
use crate::job::entry::{Confirmation, DayTime, Held, Money, Shop, ShopRetorque, Slot, Template};
use crate::trade::money::{Estimate, Line, TaxRule};

form!(Money { minor, currency });
form!(Estimate { lines, tax });
form!(Line {
    kind,
    text,
    quantity,
    each,
    taxed
});
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
    currency,
    tax,
    labour,
    warranty,
    share,
    retorque,
    keep_days,
    templates
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

impl Form for Box<Shop> {
    fn read(json: &Json<'_>) -> Option<Self> {
        Shop::read(json).map(Self::new)
    }

    fn write(&self, out: &mut Out) {
        Shop::write(self, out);
    }
}
