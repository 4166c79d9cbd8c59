//! What Pack writes about the customer and the vehicle: from a message, and from the vehicle's form.

use crate::job::entry::{Event, PersonField, VehicleField};
use crate::job::sheet::JobState;
use crate::job::wheel_end::{fitted, kind};
use crate::trade::vehicle::{
    Booking, Encoder, Fixing, NutLock, ParkingBrake, Power, Pressing, SpeedSensor, WheelBrake,
};
use crate::trade::wheel_end::Kind;
use crate::word::Word;

/// The entries of a booking message, without the answer to its step.
pub fn booked(booking: &Booking) -> Vec<Event> {
    let person = |field, found: &Option<crate::trade::vehicle::Found<String>>| {
        found
            .as_ref()
            .map(|found| Event::Person(field, found.value.clone()))
    };
    let vin = booking
        .vin
        .as_ref()
        .map(|found| Event::Vehicle(VehicleField::Vin, found.value.as_str().to_owned()));
    let said = (!booking.complaint.is_empty()).then(|| Event::Said(booking.complaint.clone()));
    [
        person(PersonField::Name, &booking.name),
        person(PersonField::Phone, &booking.phone),
        person(PersonField::Address, &booking.address),
        person(PersonField::Plate, &booking.plate),
        vin,
        said,
    ]
    .into_iter()
    .flatten()
    .collect()
}

impl VehicleField {
    /// Whether this version knows what follows from a fact: a wheel end that it does not know has no
    /// procedure here, and none is guessed. An empty text takes a fact back.
    pub fn knows(self, text: &str) -> bool {
        fn known<W: Word>(code: &str) -> bool {
            code.is_empty() || W::of_code(code).is_some()
        }
        match self {
            Self::Kind => known::<Kind>(text),
            Self::Brake => known::<WheelBrake>(text),
            Self::Sensor => known::<SpeedSensor>(text),
            Self::Encoder => known::<Encoder>(text),
            Self::NutLock => known::<NutLock>(text),
            Self::Pressing => known::<Pressing>(text),
            _ => true,
        }
    }
}

/// The facts of the vehicle's form.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Facts {
    /// The vehicle's number as typed; empty if it is not known.
    pub vin: String,
    /// The plate as typed; empty if it is not known.
    pub plate: String,
    /// The family in free words; empty if it is not known.
    pub family: String,
    /// The vehicle's mass with its unit as typed; empty if it is not known.
    pub mass: String,
    /// The kind of wheel end.
    pub kind: Kind,
    /// What brakes it.
    pub brake: WheelBrake,
    /// What reads its speed.
    pub sensor: SpeedSensor,
    /// What the sensor reads.
    pub encoder: Encoder,
    /// What locks a setting nut.
    pub lock: NutLock,
    /// How a bearing is pressed.
    pub pressing: Pressing,
    /// Fasteners of each wheel.
    pub studs: u8,
    /// Bolts of each hub.
    pub hub_bolts: u8,
    /// How the wheels are fixed.
    pub fixing: Fixing,
    /// What drives it.
    pub power: Power,
    /// What the parking brake acts on.
    pub parking_brake: ParkingBrake,
}

impl Facts {
    /// Counts of wheel fasteners that most cars have.
    pub const STUDS: [u8; 3] = [4, 5, 6];
    /// The other counts.
    pub const OTHER_STUDS: [u8; 5] = [3, 7, 8, 9, 10];
    /// Counts of hub bolts.
    pub const HUB_BOLTS: [u8; 2] = [3, 4];

    /// What the sheet knows, and the most common where it knows nothing.
    pub fn of(sheet: &JobState) -> Self {
        let text = |field| sheet.vehicle(field).unwrap_or_default();
        let count = |field, common| text(field).parse().unwrap_or(common);
        let fitted = fitted(sheet);
        Self {
            vin: text(VehicleField::Vin).to_owned(),
            plate: sheet
                .person(PersonField::Plate)
                .unwrap_or_default()
                .to_owned(),
            family: text(VehicleField::Family).to_owned(),
            mass: text(VehicleField::Mass).to_owned(),
            kind: kind(sheet),
            brake: fitted.brake,
            sensor: fitted.sensor,
            encoder: fitted.encoder,
            lock: fitted.lock,
            pressing: fitted.pressing,
            studs: count(VehicleField::Studs, 5),
            hub_bolts: count(VehicleField::HubBolts, 4),
            fixing: fitted.fixing,
            power: Power::from_code(text(VehicleField::Power)).unwrap_or(Power::Combustion),
            parking_brake: fitted.parking,
        }
    }

    /// The entries of these facts; an empty text is written only where it takes one back.
    pub fn whats(&self, sheet: &JobState) -> Vec<Event> {
        let fact = |field, text: &str| Event::Vehicle(field, text.trim().to_owned());
        let mut whats = vec![
            fact(VehicleField::Kind, self.kind.code()),
            fact(VehicleField::Studs, &self.studs.to_string()),
            fact(VehicleField::HubBolts, &self.hub_bolts.to_string()),
            fact(VehicleField::Fixing, self.fixing.code()),
            fact(VehicleField::Power, self.power.code()),
            fact(VehicleField::ParkingBrake, self.parking_brake.code()),
        ];
        // What most have is not written down.
        let common = fitted(sheet);
        let fittings = [
            (VehicleField::Brake, self.brake.code(), common.brake.code()),
            (
                VehicleField::Sensor,
                self.sensor.code(),
                common.sensor.code(),
            ),
            (
                VehicleField::Encoder,
                self.encoder.code(),
                common.encoder.code(),
            ),
            (VehicleField::NutLock, self.lock.code(), common.lock.code()),
            (
                VehicleField::Pressing,
                self.pressing.code(),
                common.pressing.code(),
            ),
        ];
        let other = fittings.iter().filter(|(_, now, known)| now != known);
        whats.extend(other.map(|(field, now, _)| fact(*field, now)));
        for (field, text) in [
            (VehicleField::Vin, &self.vin),
            (VehicleField::Family, &self.family),
            (VehicleField::Mass, &self.mass),
        ] {
            if text.trim() != sheet.vehicle(field).unwrap_or_default() {
                whats.push(fact(field, text));
            }
        }
        let plate = self.plate.trim();
        if plate != sheet.person(PersonField::Plate).unwrap_or_default() {
            whats.push(Event::Person(PersonField::Plate, plate.to_owned()));
        }
        whats
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::fold;
    use crate::trade::vehicle::read_booking;

    #[test]
    fn a_message_gives_each_finding_its_own_entry_and_the_rest_as_it_stands() {
        let message = "Name: Ada Nobody\nPlate: PRC 001\nIt hums at speed, front left.";
        let whats = booked(&read_booking(message));
        let plate = Event::Person(PersonField::Plate, "PRC 001".to_owned());
        assert!(whats.contains(&plate));
        let said = whats.iter().find_map(|what| match what {
            Event::Said(text) => Some(text.as_str()),
            _ => None,
        });
        assert_eq!(said, Some("It hums at speed, front left."));
        assert!(booked(&read_booking("")).is_empty());
    }

    #[test]
    fn an_untouched_form_states_the_common_and_leaves_unknown_texts_alone() {
        let sheet = fold([]);
        let facts = Facts::of(&sheet);
        let whats = facts.whats(&sheet);
        assert_eq!(whats.len(), 6);
        assert!(whats.contains(&Event::Vehicle(
            VehicleField::Kind,
            "bolted_driven".to_owned()
        )));
        assert!(whats.contains(&Event::Vehicle(VehicleField::Studs, "5".to_owned())));
        let typed = Facts {
            family: " Marten ".to_owned(),
            ..facts
        };
        let family = Event::Vehicle(VehicleField::Family, "Marten".to_owned());
        assert!(typed.whats(&sheet).contains(&family));
    }
}
