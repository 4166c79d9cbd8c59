//! Invented messages only.
use super::*;

/// What a message should give, in its own words.
#[derive(Debug, Default, PartialEq)]
struct Want<'a> {
    vin: Option<&'a str>,
    phone: Option<&'a str>,
    plate: Option<&'a str>,
    address: Option<&'a str>,
    name: Option<&'a str>,
    complaint: &'a str,
}

#[track_caller]
fn reads(text: &str, want: &Want) {
    let got = read_booking(text);
    let seen = Want {
        vin: got.vin.as_ref().map(|f| f.value.as_str()),
        phone: got.phone.as_ref().map(|f| f.value.as_str()),
        plate: got.plate.as_ref().map(|f| f.value.as_str()),
        address: got.address.as_ref().map(|f| f.value.as_str()),
        name: got.name.as_ref().map(|f| f.value.as_str()),
        complaint: &got.complaint,
    };
    assert_eq!(&seen, want);
    for found in [&got.phone, &got.plate, &got.address, &got.name]
        .into_iter()
        .flatten()
    {
        assert_eq!(text.get(found.span.clone()), Some(found.value.as_str()));
    }
}

#[test]
fn a_message_of_one_breath() {
    reads(
        "Hi, this is Dana Quill, front left hums from 40 mph and gets louder when I turn right. \
         VIN 1M8GDM9AXKP042788, plate KLM 4821, 12 Alder Lane, Fernbrook. Call 555-0142",
        &Want {
            vin: Some("1M8GDM9AXKP042788"),
            phone: Some("555-0142"),
            plate: Some("KLM 4821"),
            address: Some("12 Alder Lane, Fernbrook"),
            name: Some("Dana Quill"),
            complaint: "Hi, front left hums from 40 mph and gets louder when I turn right.",
        },
    );
}

#[test]
fn a_message_of_lines() {
    reads(
        "Name: Robin Tarn\nPhone: (555) 010-0142\nReg: AB12 CDE\nAddress: Unit 4, 88 Mill Road\n\
         VIN: 11111111111111111\nGrinding noise at the back,\nworse in the rain.",
        &Want {
            vin: Some("11111111111111111"),
            phone: Some("(555) 010-0142"),
            plate: Some("AB12 CDE"),
            address: Some("Unit 4, 88 Mill Road"),
            name: Some("Robin Tarn"),
            complaint: "Grinding noise at the back,\nworse in the rain.",
        },
    );
}

#[test]
fn a_signature_and_a_plate_without_a_word() {
    reads(
        "clunk from the right front since the pothole on Friday\n7ABC123\n+1 555 010 0142\nSam Ode",
        &Want {
            phone: Some("+1 555 010 0142"),
            plate: Some("7ABC123"),
            name: Some("Sam Ode"),
            complaint: "clunk from the right front since the pothole on Friday",
            ..Want::default()
        },
    );
}

#[test]
fn a_number_that_fails_its_check_is_taken_only_when_it_is_announced() {
    reads(
        "vin is 1M8GDM9A1KP042788 and it hums",
        &Want {
            vin: Some("1M8GDM9A1KP042788"),
            complaint: "and it hums",
            ..Want::default()
        },
    );
    reads(
        "ref 1M8GDM9A1KP042788 hums",
        &Want {
            complaint: "ref 1M8GDM9A1KP042788 hums",
            ..Want::default()
        },
    );
}

#[test]
fn a_complaint_alone_is_saved_to_the_letter() {
    for text in [
        "Humming at 45 mph, goes away over 60. Done 80000 miles, 225/45R17 tires fitted 2 weeks ago",
        "It hums  at 40 mph on the way   to work;\n\nquiet when I turn left.",
        "My call got cut. Noise from the rear, 3 times worse when on the motorway",
        "Wobble over 50 km/h. Hub was replaced in 2021 at 61,000 km",
        "Name your price. It grinds.",
    ] {
        reads(
            text,
            &Want {
                complaint: text,
                ..Want::default()
            },
        );
    }
}

#[test]
fn an_empty_message_says_nothing() {
    reads("", &Want::default());
    reads("  \n ", &Want::default());
}

#[test]
fn nothing_but_the_findings_is_lost() {
    let text = "At 9 Quarry Road now. Reg no: TRY 77. Mobile 0555 010 0142. Drone + judder?!";
    reads(
        text,
        &Want {
            phone: Some("0555 010 0142"),
            plate: Some("TRY 77"),
            address: Some("9 Quarry Road"),
            complaint: "now. Drone + judder?!",
            ..Want::default()
        },
    );
}

#[test]
fn what_is_said_around_a_finding_goes_with_it() {
    reads(
        "Humming from the front, louder at 55. My number is 555-0142. I live at 221 Old Mill Rd, \
         Fernbrook 48203. Thanks, Robin",
        &Want {
            phone: Some("555-0142"),
            address: Some("221 Old Mill Rd, Fernbrook 48203"),
            name: Some("Robin"),
            complaint: "Humming from the front, louder at 55.",
            ..Want::default()
        },
    );
}

#[test]
fn a_name_on_its_line_is_reported_from_the_town_under_an_address() {
    reads(
        "growls\n14 The Crescent\nFernbrook",
        &Want {
            address: Some("14 The Crescent"),
            complaint: "growls\nFernbrook",
            ..Want::default()
        },
    );
    reads(
        "growls\n12 Elm Road\nSam Ode\n555-0142",
        &Want {
            phone: Some("555-0142"),
            address: Some("12 Elm Road"),
            name: Some("Sam Ode"),
            complaint: "growls",
            ..Want::default()
        },
    );
}

#[test]
fn a_number_in_groups_is_read_after_its_label() {
    reads(
        "hums. VIN: 1M8GDM9A XKP042788.",
        &Want {
            vin: Some("1M8GDM9AXKP042788"),
            complaint: "hums.",
            ..Want::default()
        },
    );
}

#[test]
fn flats_hyphens_and_the_end_of_a_sentence_are_understood() {
    reads(
        "knocks, at 1600 N Alder Ave. Apt 4, gate code 4471. Plate: M-KL 4821. It is 14. 555 010 142",
        &Want {
            phone: Some("555 010 142"),
            plate: Some("M-KL 4821"),
            address: Some("1600 N Alder Ave. Apt 4"),
            complaint: "knocks, gate code 4471. It is 14.",
            ..Want::default()
        },
    );
}
