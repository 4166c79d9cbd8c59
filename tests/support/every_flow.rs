//! Whatever goes between the shop and its vans.

use super::*;

fn slot() -> impl Strategy<Value = Slot> {
    let time = option::of((0_u32..24, 0_u32..60));
    let van = select(&["", "N", "KLM"][..]).prop_map(str::to_owned);
    (1_u32..29, time, van).prop_map(|(day, time, van)| Slot {
        day: NaiveDate::from_ymd_opt(2027, 2, day).unwrap(),
        time: time.and_then(|(h, m)| DayTime::parse(&format!("{h:02}:{m:02}"))),
        van,
    })
}

fn shop() -> impl Strategy<Value = Shop> {
    let retorque = (typed(DistanceUnit::ALL), 1_u16..=99)
        .prop_map(|(after, days)| ShopRetorque { after, days });
    let rules = (
        option::of((0_u8..50, 50_u8..=100)),
        option::of(retorque),
        option::of(1_u16..1000),
    );
    let currency = select(&["", "USD", "EUR"][..]).prop_map(str::to_owned);
    let labour = option::of(0_i64..100_000);
    let texts = (text(), text(), text());
    (currency, labour, texts, rules, estimate()).prop_map(
        |(currency, labour, texts, (share, retorque, keep_days), estimate)| {
            let (warranty, name, contact) = texts;
            let mut shop = Shop {
                name,
                contact,
                currency,
                tax: estimate.tax,
                labour,
                warranty,
                share,
                retorque,
                keep_days,
                templates: Vec::new(),
            };
            shop.set_template(Kind::BoltedDriven, estimate.lines);
            shop
        },
    )
}

fn confirmation() -> impl Strategy<Value = Confirmation> {
    let held = (uuid(), text(), any::<u32>(), any::<u32>(), hex()).prop_map(
        |(log, device, through, count, digest)| Held {
            log: LogId(log),
            device,
            through: through.into(),
            count: count.into(),
            digest,
        },
    );
    vec(held, 0..3).prop_map(|held| Confirmation { held })
}

pub(super) fn sent() -> impl Strategy<Value = Event> {
    prop_oneof![
        slot().prop_map(Event::Slot),
        shop().prop_map(|shop| Event::Shop(Box::new(shop))),
        confirmation().prop_map(Event::Confirmation),
        hex().prop_map(Event::LetGo),
    ]
}
