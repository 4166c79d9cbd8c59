//! What holds for every text in every language.
use super::*;
use crate::trade::wheel_end::{CornerPlan, Course, Fitted, Form, LOOKS, Plan, Start, procedure};

/// Where a text stands, and the text.
struct Found(String, String);

/// One entry for each value of a closed set.
macro_rules! all {
    ($found:ident, $lang:ident, $($call:ident($set:ident)),+ $(,)?) => {
        $(for value in $set::ALL {
            $found.push(Found(format!("{}({value:?})", stringify!($call)), $call($lang, *value).to_owned()));
        })+
    };
}

fn fixed(lang: Lang) -> Vec<Found> {
    let mut found = Vec::new();
    all!(
        found,
        lang,
        phase(Phase),
        caution(Caution),
        sign(Sign),
        pick(Choice),
        because(NotDoneReason),
        hold_state(ItemState),
        corner(Corner),
        corner_title(Corner),
        kind(Kind),
        nut_position(NutPosition),
        kit_item(KitItem),
        person_field(PersonField),
        vehicle_field(VehicleField),
        charge(Charge),
        how(How),
        scope(Scope),
        due_kind(DueKind),
        answer(Answer),
        felt(Felt),
        wheel_brake(WheelBrake),
        speed_sensor(SpeedSensor),
        encoder(Encoder),
        nut_lock(NutLock),
        pressing(Pressing),
        decision(Decision),
        decision_next(Decision),
        declined_consequence(Decision),
        now(Now),
        now_say(Now),
        report(ReportWord),
        desk(Desk),
        ledger(Ledger),
        inspected(Inspected),
        finding(Finding),
        likely_cause(LikelyCause),
        removed(RemovedWord),
        vehicle_word(VehicleWord),
        came_back_for(CameBackFor),
        complaint(Complaint),
        cause(Cause),
        clue(Clue),
        cause_test(CauseTest),
        cause_word(CauseWord),
        flow(Flow),
        fixing(Fixing),
        power(Power),
        parking_brake(ParkingBrake),
        was_found_customer(Decision),
        method(Method),
        place(Place),
        rig(Rig),
        condition(Condition),
        remark(Remark),
        interruption(Interruption),
        standing(Standing),
        leaving(Leaving),
        take_over(TakeOver),
        property_class(PropertyClass),
        pattern(Pattern),
        settled(Settled),
        dial_kind(DialKind),
        mark(ReadingFlag),
        budget_source(Source),
        limit_source(LimitSource),
        ground(Ground),
        test(Test),
        test_customer(Test),
        face(FaceWord),
        book(BookWord),
        surface(Surface),
        left_out(LeftOut),
        next_at_face(Next),
        thick(ThickWord),
        bound(Bound),
        type_bound(Bound),
        next_of_rotor(RotorNext),
        saved(Saved),
        caption_word(CaptionWord),
    );
    for kind in [Kind::BoltedDriven, Kind::Tapered] {
        for value in Decision::ALL {
            let say = decision_sentence_customer(lang, *value, kind).to_owned();
            found.push(Found(format!("{value:?} at {kind:?}"), say));
        }
    }
    for value in crate::trade::runout::Form::ALL {
        found.push(Found(
            format!("{value:?}"),
            en::runout::form(*value).to_owned(),
        ));
    }
    for fixing in Fixing::ALL {
        let (nuts, bolts) = (group(lang, ItemKind::LugNuts, Fixing::Nuts), Fixing::Bolts);
        assert_ne!(nuts, group(lang, ItemKind::LugNuts, bolts));
        for value in MishapKind::ALL {
            for say in [mishap, mishap_say, mishap_part] {
                found.push(Found(
                    format!("{value:?}"),
                    say(lang, *value, *fixing).to_owned(),
                ));
            }
        }
        for value in ItemKind::ALL {
            let text = group(lang, *value, *fixing).to_owned();
            found.push(Found(format!("{value:?}"), text));
        }
        for value in SpecItem::ALL {
            let text = spec_item(lang, *value, *fixing).to_owned();
            found.push(Found(format!("{value:?}"), text));
        }
    }
    for fixing in Fixing::ALL {
        let mut build = common(NutPosition::AirBrakeHeld);
        build.fitted.fixing = *fixing;
        for value in Check::ALL {
            let row = Given::Row(*value, Answer::No);
            let no = follows(lang, StepKey::once(Step::Clear), row, build).to_owned();
            found.push(Found(format!("no to {value:?}"), no));
            let said = check(lang, *value, *fixing).to_owned();
            found.push(Found(format!("{value:?}"), said));
        }
    }
    for hold in HoldPoint::ALL {
        let (title, sentence) = hold_point(lang, *hold);
        found.push(Found(format!("{hold:?} title"), title.to_owned()));
        found.push(Found(format!("{hold:?} sentence"), sentence.to_owned()));
    }
    for value in Ending::ALL {
        let (title, sentence) = ending(lang, *value);
        found.push(Found(format!("{value:?} title"), title.to_owned()));
        found.push(Found(format!("{value:?} sentence"), sentence.to_owned()));
    }
    for value in Say::KEYS.iter().chain(Say::WORDS) {
        found.push(Found(
            format!("say {value:?}"),
            say(lang, *value).to_owned(),
        ));
    }
    found
}

/// Every wording of every step, whatever the nut's position and whichever time.
fn steps(lang: Lang) -> Vec<(String, StepText)> {
    let mut found = Vec::new();
    for step in Step::ALL {
        for build in builds() {
            for nth in [1, 2] {
                let text = step_for(lang, StepKey::once(*step).nth(nth), build);
                if found.last().is_none_or(|(_, last)| *last != text) {
                    found.push((format!("{step:?} {build:?} {nth}"), text));
                }
            }
        }
    }
    found
}

/// Every wheel end that steps are told otherwise for.
fn builds() -> Vec<Build> {
    let mut all = Vec::new();
    let mut fittings = Vec::new();
    for fixing in Fixing::ALL {
        for brake in WheelBrake::ALL {
            for parking in ParkingBrake::ALL {
                for lock in NutLock::ALL {
                    for encoder in Encoder::ALL {
                        fittings.push(Fitted {
                            fixing: *fixing,
                            brake: *brake,
                            parking: *parking,
                            lock: *lock,
                            encoder: *encoder,
                            ..Fitted::COMMON
                        });
                    }
                }
            }
        }
    }
    for kind in Kind::ALL {
        for nut in NutPosition::ALL {
            let build = |fitted: &Fitted| Build {
                kind: *kind,
                nut: *nut,
                fitted: *fitted,
            };
            all.extend(fittings.iter().map(build));
        }
    }
    all
}

/// A bolted, driven hub whose nut is held so.
const fn common(nut: NutPosition) -> Build {
    Build {
        kind: Kind::BoltedDriven,
        nut,
        fitted: Fitted::COMMON,
    }
}

fn step_texts(lang: Lang) -> Vec<Found> {
    let mut found = Vec::new();
    for (name, text) in steps(lang) {
        let parts = [
            ("name", text.name),
            ("say", text.say),
            ("caution", text.caution.unwrap_or("none")),
            ("primary", text.primary),
            ("no", text.no),
            ("why", text.why),
        ];
        found.extend(parts.map(|(part, it)| Found(format!("{name} {part}"), it.to_owned())));
    }
    found
}

fn reasons() -> Vec<ReasonWord<'static>> {
    let (play, limit, uncertainty, source) = ("0.06 mm", "0.05 mm", "0.02 mm", "page 3");
    vec![
        ReasonWord::PlayOverProven {
            play,
            uncertainty,
            limit,
            source,
        },
        ReasonWord::PlayOverNotProven {
            play,
            uncertainty,
            limit,
        },
        ReasonWord::PlayWithinProven {
            play,
            uncertainty,
            limit,
            source,
        },
        ReasonWord::PlayWithinNotProven {
            play,
            uncertainty,
            limit,
        },
        ReasonWord::PlayTightProven {
            play,
            uncertainty,
            least: limit,
            source,
        },
        ReasonWord::PlayTightNotProven {
            play,
            uncertainty,
            least: limit,
        },
        ReasonWord::HouseLimitOver { play, limit },
        ReasonWord::HouseLimitUnder { play, limit },
        ReasonWord::ZeroLimitStill { resolution: limit },
        ReasonWord::SecondSetAgrees,
        ReasonWord::SecondSetDiffers,
        ReasonWord::Rough,
        ReasonWord::NoisyFromBearing,
        ReasonWord::HeatSmokeGrinding,
        ReasonWord::PlayFeltGoneWithBrake,
        ReasonWord::PlayFeltStaysWithBrake,
        ReasonWord::PlayFelt,
        ReasonWord::Knocks,
        ReasonWord::Tilts,
        ReasonWord::Seen,
        ReasonWord::NutFoundSlack,
        ReasonWord::LugNutsLoose,
        ReasonWord::SomethingCracked,
        ReasonWord::RoadPointsHere,
        ReasonWord::RoadPointsElsewhere,
        ReasonWord::RoadNotLocated,
        ReasonWord::HotterThanOther,
        ReasonWord::NothingFound,
        ReasonWord::NotDone {
            what: "Spin by hand",
        },
        ReasonWord::NotCompared {
            why: "the limit is for another place",
        },
        ReasonWord::NewPartOver { play, limit },
        ReasonWord::NewPartRough,
        ReasonWord::BrakeFault,
        ReasonWord::LocksUp,
    ]
}

fn every(lang: Lang) -> Vec<Found> {
    let mut found = fixed(lang);
    found.extend(step_texts(lang));
    found.extend(
        reasons()
            .into_iter()
            .map(|it| Found(format!("{it:?}"), reason(lang, it))),
    );
    for group in ItemKind::ALL {
        for number in 1..=3 {
            let of = Item {
                corner: Corner::RearLeft,
                group: *group,
                number,
            };
            for fixing in Fixing::ALL {
                found.push(Found(format!("{of:?}"), item(lang, of, *fixing)));
                found.push(Found(format!("{of:?} at"), item_at(lang, of, *fixing)));
            }
        }
    }
    found
}

#[track_caller]
fn none_breaks(rule: &str, breaks: impl Fn(&Found) -> bool) {
    for lang in Lang::ALL {
        let broken: Vec<_> = every(*lang)
            .into_iter()
            .filter(|it| breaks(it))
            .map(|Found(place, text)| format!("{place}: {text:?}"))
            .collect();
        assert!(broken.is_empty(), "{rule}\n{}", broken.join("\n"));
    }
}

#[test]
fn every_value_has_a_text_without_stray_space() {
    none_breaks("empty or stray space", |Found(_, text)| {
        text.is_empty() || text.trim() != text || text.contains("  ") || text.contains('\n')
    });
}

#[test]
fn nothing_shouts_and_nothing_is_left_to_write() {
    none_breaks("exclamation mark or unwritten text", |Found(_, text)| {
        text.contains(['!', '¡']) || text.contains("todo") || text.contains("TODO")
    });
}

#[test]
fn no_label_shows_the_names_that_only_the_plan_uses() {
    let hidden = ["K1", "K2", "K3", "K4", "FL", "FR", "RL", "RR"];
    none_breaks("a name of the plan", |Found(_, text)| {
        text.split(|c: char| !c.is_alphanumeric())
            .any(|word| hidden.contains(&word))
            || text.contains("gen 2")
            || text.contains("gen 3")
    });
}

#[test]
fn sentences_of_steps_and_shell_fit_a_small_screen() {
    for lang in Lang::ALL {
        for value in Say::WORDS {
            let text = say(*lang, *value);
            assert!(text.chars().count() <= 140, "{value:?}: {text}");
        }
        for (name, text) in steps(*lang) {
            assert!(text.name.chars().count() <= 24, "{name}: {}", text.name);
            assert!(text.say.chars().count() <= 140, "{name}: {}", text.say);
            assert!(text.why.chars().count() <= 140, "{name}: {}", text.why);
            let caution = text.caution.unwrap_or_default();
            assert!(caution.chars().count() <= 190, "{name}: {caution}");
        }
    }
}

#[test]
fn key_labels_fit_a_key_on_a_narrow_phone() {
    for lang in Lang::ALL {
        for key in Say::KEYS {
            let label = say(*lang, *key);
            assert!(label.chars().count() <= 22, "{key:?}: {label}");
        }
        for value in Choice::ALL {
            let label = pick(*lang, *value);
            assert!(label.chars().count() <= 24, "{value:?}: {label}");
        }
        for (name, text) in steps(*lang) {
            for label in [text.primary, text.no] {
                assert!(label.chars().count() <= 24, "{name}: {label}");
            }
        }
    }
}

#[test]
fn a_step_that_differs_by_the_nut_is_reported_differently() {
    let lang = Lang::English;
    let at = |step, nth, nut| step_for(lang, StepKey::once(step).nth(nth), common(nut));
    for step in [Step::TurnAxleNut, Step::NutOn] {
        let templates: Vec<_> = NutPosition::ALL
            .iter()
            .map(|nut| at(step, 1, *nut).say)
            .collect();
        assert!(
            templates[0] != templates[1]
                && templates[1] != templates[2]
                && templates[0] != templates[2]
        );
    }
    let ground = NutPosition::OnGround;
    assert_ne!(at(Step::Lower, 1, ground), at(Step::Lower, 2, ground));
    assert_eq!(
        at(Step::Lower, 2, ground),
        at(Step::Lower, 1, NutPosition::AirBrakeHeld)
    );
    assert_ne!(at(Step::RigPush, 1, ground), at(Step::RigPush, 2, ground));
}

fn plan(nut: NutPosition) -> Plan {
    Plan {
        kind: Kind::BoltedDriven,
        fitted: Fitted::COMMON,
        start: Start::AtHome,
        corners: vec![CornerPlan {
            corner: Corner::FrontLeft,
            course: Course::Replace,
            stop: false,
            play_felt: true,
            second_set: true,
            blocked: true,
            reopened: true,
            waited: true,
            broken_stud: None,
        }],
        nut,
        site_refused: false,
        teardown_refused: false,
        nuts_loose: true,
        wrong_looks: LOOKS.to_vec(),
        warning_lights: None,
        driven: true,
        more_questions: true,
        signs: vec![Sign::Speed],
        ended: true,
    }
}

#[test]
fn a_question_can_be_answered_with_yes_or_no() {
    for nut in NutPosition::ALL {
        for planned in procedure(&plan(*nut)) {
            if planned.form == Form::Ask {
                let text = step_for(Lang::English, planned.key, common(*nut));
                assert_ne!(text.primary, text.no, "{:?}", planned.key);
            }
        }
    }
}

/// The cautions that the trade wants on these very steps, each by a word that must be in it.
#[test]
fn cautions_stand_on_the_step_they_belong_to() {
    let wanted = [
        (Step::LiftHold, "chocks alone hold"),
        (Step::LiftStand, "only the jack"),
        (Step::Drive, "phone"),
        (Step::HeatHere, "burn"),
        (Step::BrakeHeld, "No one inside"),
        (Step::LoosenLugNuts, "axle nut stays tight"),
        (Step::WheelOff, "dust"),
        (Step::CaliperUp, "Keep off the pedal"),
        (Step::CaliperUp, "by its hose"),
        (Step::LoosenAxleNut, "not be rolled"),
        (Step::StripBrake, "No hammer"),
        (Step::StripBrake, "hose never"),
        (Step::StripSensor, "before the hub moves"),
        (Step::StripHub, "No hammer"),
        (Step::StripHub, "Support the shaft"),
        (Step::Seat, "No grease"),
        (Step::Offer, "No force on the splines"),
        (Step::CaliperOn, "pedal is dead"),
        (Step::Pedal, "No one inside"),
        (Step::TurnAxleNut, "no impact tool"),
        (Step::CaliperUpAgain, "pedal is dead"),
        (Step::Stake, "Never turn the nut back"),
        (Step::Lower, "axle nut at spec"),
        (Step::TurnLugNuts, "starts again at 1"),
        (Step::ProvePedal, "does not move"),
    ];
    for (of, word) in wanted {
        let caution = step(Lang::English, of).caution.expect("a caution");
        assert!(caution.contains(word), "{of:?}: {caution}");
    }
}

#[test]
fn stop_says_plainly_what_can_happen() {
    for text in [
        decision_sentence_customer(Lang::English, Decision::Stop, Kind::BoltedDriven),
        declined_consequence(Lang::English, Decision::Stop),
    ] {
        for word in ["steering", "wheel can come off", "hurt", "drive"] {
            assert!(text.contains(word), "{word}: {text}");
        }
    }
}

#[test]
fn the_house_limit_never_hides_that_it_has_no_source() {
    let lang = Lang::English;
    let texts = [
        house_limit(lang, "0.004 in"),
        house_limit_used(lang, "0.004 in"),
        default_limit_used(lang, "0.004 in"),
        reason(
            lang,
            ReasonWord::HouseLimitOver {
                play: "a",
                limit: "b",
            },
        ),
        reason(
            lang,
            ReasonWord::HouseLimitUnder {
                play: "a",
                limit: "b",
            },
        ),
    ];
    for text in texts {
        assert!(text.contains("common practice, no source"), "{text}");
    }
}

#[test]
fn values_stand_in_their_sentences() {
    let lang = Lang::English;
    let nut = Item {
        corner: Corner::FrontLeft,
        group: ItemKind::LugNuts,
        number: 3,
    };
    assert_eq!(item(lang, nut, Fixing::Nuts), "Lug nut 3");
    assert_eq!(item_at(lang, nut, Fixing::Nuts), "Lug nut 3, front left");
    assert_eq!(
        nut_clicked(lang, &item(lang, nut, Fixing::Nuts)),
        "Lug nut 3 clicked"
    );
    assert_eq!(loose_count(lang, 0, false), "Nothing loose");
    assert_eq!(loose_count(lang, 11, false), "11 loose");
    assert_eq!(loose_count(lang, 0, true), "Unknown what is loose");
    assert_eq!(loose_number(lang, 11, true), "11+");
    assert_eq!(
        job_file_stem(lang, "2026-03-04", "AB 12/CD"),
        "hubslate-job-2026-03-04-AB12CD"
    );
    assert_eq!(
        corner_decision(lang, Corner::RearRight, Decision::Watch),
        "Rear right: WATCH"
    );
}

#[test]
fn what_is_met_on_a_practice_car_is_reported_and_never_by_sound_alone() {
    let lang = Lang::English;
    let names = Named::ALL.iter().copied().map(Some).chain([None]);
    let mut templates: Vec<String> = names
        .flat_map(|named| [practice_name(lang, named), practice_said(lang, named)])
        .map(str::to_owned)
        .collect();
    let spun = [
        Choice::SmoothQuiet,
        Choice::Rough,
        Choice::Noisy,
        Choice::RoughNoisy,
    ];
    templates.extend(spun.map(|pick| practice_met(lang, Met::Found(pick), "")));
    templates.extend(
        Felt::ALL
            .iter()
            .map(|felt| practice_met(lang, Met::Felt(*felt), "")),
    );
    let mut apart = templates.clone();
    apart.sort_unstable();
    apart.dedup();
    assert_eq!(apart.len(), templates.len(), "two things are told alike");
    assert!(
        templates
            .iter()
            .all(|text| (5..=140).contains(&text.chars().count()))
    );
    assert!(practice_met(lang, Met::Found(Choice::SmoothQuiet), "").contains("smooth and quiet"));
    assert!(practice_met(lang, Met::Found(Choice::RoughNoisy), "").contains("grinds once a turn"));
}
