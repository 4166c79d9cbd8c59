//! What a run round a face and a rotor under the micrometer are made of.

use hubslate::job::entry::{
    Event, Gauging, RunoutReading, RunoutSpec, Setup, ThicknessReading, ThicknessSpec,
};
use hubslate::trade::answer::Answer;
use hubslate::trade::fastening::SpecSource;
use hubslate::trade::play::Dial;
use hubslate::trade::runout::{Bound, Micrometer, Surface};
use hubslate::trade::vehicle::{Axle, Corner};
use hubslate::units::{Decimal, LengthUnit, Typed};

pub const HERE: Corner = Corner::FrontLeft;

pub fn source() -> SpecSource {
    SpecSource {
        document: "Service pages (invented)".to_owned(),
        page: "4-12".to_owned(),
        looked_up: chrono::NaiveDate::from_ymd_opt(2026, 2, 1).unwrap(),
        who: "R. Okafor".to_owned(),
        override_reason: None,
    }
}

/// A run at equal steps on a dial in hundredths, from heights in these.
pub fn run(
    nth: u8,
    surface: Surface,
    (stud, cleaned): (u8, Answer),
    heights: &[f64],
) -> Vec<Event> {
    let places = u8::try_from(heights.len()).unwrap();
    let radius = if surface == Surface::Rotor {
        "140"
    } else {
        "70"
    };
    let reading = |(place, height): (u8, &f64)| {
        Event::Runout(RunoutReading {
            corner: HERE,
            run: nth,
            setup: Setup {
                surface,
                places,
                stud,
                cleaned,
            },
            place,
            angle: None,
            radius: Some(Typed::parse(radius, LengthUnit::Millimetre).unwrap()),
            divisions: Some(Decimal::parse(&format!("{:.1}", 40.0 + height)).unwrap()),
            turns: None,
            dial: Dial::HUNDREDTH_MM,
            left_out: None,
        })
    };
    (1..).zip(heights).map(reading).collect()
}

/// A rotor in hundredths of a millimetre over 22 mm.
pub fn rotor(nth: u8, over: &[f64]) -> Vec<Event> {
    let places = u8::try_from(over.len()).unwrap();
    let measured = |(place, over): (u8, &f64)| {
        let text = format!("{:.3}", 22.0 + over / 100.0);
        Event::Thickness(ThicknessReading {
            corner: HERE,
            run: nth,
            gauging: Gauging {
                micrometer: Micrometer::ThousandthMm,
                places,
            },
            place,
            thickness: Some(Typed::parse(&text, LengthUnit::Millimetre).unwrap()),
        })
    };
    (1..).zip(over).map(measured).collect()
}

pub fn most(surface: Surface, text: &str) -> Event {
    Event::RunoutLimit(RunoutSpec {
        surface,
        most: Typed::parse(text, LengthUnit::Millimetre).unwrap(),
        source: source(),
    })
}

pub fn bound(bound: Bound, text: &str) -> Event {
    Event::ThicknessLimit(ThicknessSpec {
        axle: Axle::Front,
        bound,
        value: Typed::parse(text, LengthUnit::Millimetre).unwrap(),
        source: source(),
    })
}
