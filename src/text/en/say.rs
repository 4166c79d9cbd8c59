//! The keys and sentences of the shell.

use crate::text::say::Say;

pub(in crate::text) fn say(say: Say) -> &'static str {
    match say {
        // Home and the job.
        Say::NewJob => "New job",
        Say::FindJob => "Find a job",
        Say::PracticeJob => "Practice job",
        Say::ChoosePractice => "Which practice car?",
        Say::AnotherCar => "Another car",
        Say::TryIt => "Try it",
        Say::HoldPush => "Hold: push",
        Say::HoldPull => "Hold: pull",
        Say::HoldKnuckle => "Hold: push the knuckle",
        Say::ShowTruth => "What this car had",
        Say::StartAtHome => "Start at home",
        Say::StartAtCar => "Start at the car",
        Say::OpenJob => "Open the job",
        Say::ThrowAway => "Throw it away",
        Say::ShopSheet => "Jobs on this phone",
        Say::Settings => "Settings",
        Say::Help => "How it works",
        // Answering a step.
        Say::Yes => "Yes",
        Say::No => "No",
        Say::NotDone => "Not done",
        Say::NotDoneBecause => "Not done, because…",
        Say::CannotBecause => "Cannot, because…",
        Say::WillNotGo => "It won't go",
        Say::Done => "Done",
        Say::Keep => "Keep",
        Say::KeepNumber => "Keep the number",
        Say::Same => "Same",
        Say::NotFound => "Not found",
        Say::LookedUpAgain => "Looked up again today",
        Say::NotLookedUpSince => "Not looked up again",
        Say::AllYes => "All right as it is",
        Say::NotSafeHere => "Not safe here",
        Say::TakePicture => "Take a picture",
        Say::ChooseFile => "Choose a picture",
        Say::Clear => "Clear",
        Say::SignHere => "Sign here",
        Say::OwnerYes => "Owner says yes",
        Say::YesSpoken => "Yes, by word",
        Say::OwnerNo => "Owner says no",
        Say::ShowOwner => "Show the owner",
        Say::BackToTech => "Back to the work",
        Say::StartCount => "Start the count",
        Say::StopCount => "Stop the count",
        Say::CountAgain => "Count again",
        Say::Snug => "All snug",
        Say::Clicked => "It clicked",
        Say::Cracked => "It is cracked",
        Say::WentWrong => "Something is wrong",
        Say::RecordIt => "Record it",
        Say::StartPassAgain => "Start again at\u{a0}1",
        Say::NoFigureFound => "No figure found",
        Say::SecondSet => "Take a second set",
        Say::NotZeroed => "Dial was not at zero",
        Say::Zeroed => "Dial was set to zero",
        Say::UndoEnd => "Take back the end",
        Say::StillAtZero => "Needle still at 0",
        Say::PushReading => "Keep push reading",
        Say::PullReading => "Keep pull reading",
        Say::MeasureAgain => "Measure again",
        // Moving about.
        Say::Undo => "Undo",
        Say::Redo => "Do it again",
        Say::Note => "Note",
        Say::Photo => "Picture",
        Say::Pause => "Pause",
        Say::Resume => "Go on",
        Say::Where => "Where am I",
        Say::LooseList => "Loose list",
        Say::ShowReport => "The report",
        Say::More => "More",
        Say::Why => "Why",
        Say::Back => "Back",
        Say::Next => "Next",
        Say::Close => "Close",
        Say::Cancel => "Cancel",
        Say::Retry => "Try again",
        Say::GoThere => "Go to that step",
        Say::TellLater => "Done at another time",
        Say::EndNow => "End the job here",
        Say::ExportAndEnd => "Export and end",
        // Pad and stepper.
        Say::PadMinus => "Minus one",
        Say::PadPlus => "Plus one",
        Say::PadMinusFive => "Minus five",
        Say::PadPlusFive => "Plus five",
        Say::PadKeys => "Number pad",
        Say::PadDial => "Dial",
        Say::PadDelete => "Delete",
        Say::PadMark => "Decimal mark",
        Say::PadSign => "Plus or minus",
        Say::PadUnit => "Change the unit",
        // Files and updates.
        Say::Export => "Export the job",
        Say::ExportAll => "Export all jobs",
        Say::Import => "Import a file",
        Say::Print => "Print",
        Say::Share => "Share",
        Say::TakeUpdate => "Take the new version",
        Say::Later => "Later",
        Say::Reload => "Load again",
        Say::SaveSetAside => "Save what was set by",
        Say::Calendar => "Add to the calendar",
        Say::EraseOwner => "Erase the owner",
        // Choices in settings.
        Say::UnitsMetric => "Metric: mm, N·m, km",
        Say::UnitsUs => "US: in, lb·ft, miles",
        Say::MarkPoint => "Point: 0.1",
        Say::MarkComma => "Comma: 0,1",
        Say::RightHand => "Right hand",
        Say::LeftHand => "Left hand",
        Say::SoundOn => "Sound on",
        Say::SoundOff => "Sound off",
        Say::TestSound => "Test the sound",
        Say::NightOn => "Dark screen",
        Say::NightOff => "Light screen",
        Say::AddWrench => "Add a wrench",
        Say::RemoveWrench => "Remove this wrench",
        Say::KeepStorage => "Ask to keep data",
        // Home.
        Say::AppName => "Hubslate",
        Say::HomeEmpty => {
            "No job yet. Start one at home with the booking message, or at once at the car."
        }
        Say::HomeNext => "Next",
        Say::HomeOverdue => "Overdue",
        Say::HomeOpen => "Open jobs",
        Say::HomeEnded => "Ended jobs",
        Say::FindHint => "Three characters of plate or name",
        Say::NotOnThisPhone => "There is no such job on this phone.",
        Say::Practice => "Practice",
        Say::PracticeSay => "An invented car. Walk the whole job, then throw it away.",
        Say::ThrowAwaySay => {
            "Hold the key to throw this practice job away. It cannot be brought back."
        }
        Say::HoldToConfirm => "Hold until the ring is full",
        Say::NoPlate => "No plate yet",
        Say::NoName => "No name yet",
        Say::PageUnknown => "This page does not exist. Go back to the jobs.",
        // Where you are, undo, coming back.
        Say::YouAreHere => "You are here",
        Say::Undone => "Taken back",
        Say::NothingToUndo => "There is nothing to take back here.",
        Say::InterruptedPass => {
            "The pass was interrupted. Start again at 1, so that none is forgotten."
        }
        Say::ComingBack => "Welcome back to the same step.",
        Say::Paused => "The job is paused. Every tap is kept.",
        Say::ToldWhen => "When was it done?",
        Say::RowNotYet => "Not yet",
        Say::NotAnswered => "–",
        Say::SignsSay => "Tap what you noticed.",
        Say::StepsDone => "Done",
        Say::StepsOpen => "Open",
        Say::StepsSkipped => "Not done",
        Say::JobEnded => "This job has ended. Only looking back is left.",
        Say::SavedAtStep => "The note belongs to this step.",
        // Loose list.
        Say::LooseTitle => "Loose list",
        Say::LooseWord => "loose",
        Say::NothingLoose => "Nothing is loose",
        Say::RowsStayOpen => "Rows above that were not touched stay open and come next.",
        Say::Incomplete => {
            "Entries of this job are missing: more may be loose. Bring in its file again; until \
             then check every fastener."
        }
        Say::ReadOnly => "A newer version wrote a part of this job. Update the app to change it.",
        Say::LooseSay => "Off or loosened and not yet back at its card.",
        Say::LooseBlocks => "With anything loose the job can end only as left unfinished.",
        Say::WhoTakesCharge => "Who takes charge of the car?",
        Say::MustNotBeDriven => "The car must not be driven.",
        // Trouble at a step.
        Say::HowManyLoose => "How many were loose?",
        Say::WhichFastener => "Which one",
        Say::PartNeeded => "Part needed",
        Say::MinutesMore => "Minutes more",
        Say::CostsMore => "Costs more, in the currency of the price",
        Say::AskFurtherYes => {
            "Tell the owner what broke, what it needs and what it costs. Work goes on after a yes."
        }
        Say::FurtherRefused => {
            "The owner said no. It is not at its card, so the car is not handed over."
        }
        Say::MendNow => {
            "The owner agreed. Fit the part and run it in by hand. Then all of them are tightened again."
        }
        Say::WillNotGoTitle => "It won't go",
        Say::WillNotGoSay => {
            "Say what stands in the way. It goes into the record, and the step stays open."
        }
        Say::CrackedSay => "Stop here. A cracked flange, knuckle or stud means STOP.",
        Say::WhyNotDone => "Why was it not done?",
        Say::NoFigureFoundSay => {
            "Say why no figure was found. It does not serve for axle nut, hub bolts, caliper or wheel."
        }
        Say::MovedOnStand => "It moved. Lower the car and set it up again before anything else.",
        Say::PedalSoft => {
            "Soft or sinking: the car must not move. Look for air or a leak, then pump again."
        }
        Say::HoldPointTitle => "Hold point",
        // Storage.
        Say::StorageKept => "Kept",
        Say::StorageKeptNotYetSafe => "Kept, not yet safe",
        Say::StorageKeeping => "Keeping…",
        Say::StorageNotKept => "Not kept",
        Say::StorageDenied => "This browser keeps nothing. Export before you close it.",
        Say::StorageOnlyBackup => {
            "The browser's database cannot be used: taps are in the backup file alone, photos nowhere. Export often."
        }
        Say::StorageOnlyLocal => {
            "This browser keeps taps late: a crash can lose the last minute. Export often."
        }
        Say::StorageFull => {
            "The phone's storage is full. Export jobs, then make room. New taps are not safe."
        }
        Say::StorageReadOnly => "This job can only be read. Nothing in it was changed.",
        Say::StorageNotPromised => {
            "The browser may clear old data. Install the app and export often."
        }
        Say::StoragePromised => "The browser has promised to keep the data.",
        Say::StorageWhere => {
            "All data is on this phone only. It leaves in the files that you export."
        }
        Say::OtherTab => "This job is open in another tab too. Both see each other's taps.",
        Say::ThrownAway => {
            "The browser deleted this app's data while it was open. Open jobs were saved again, photos are lost: export now."
        }
        Say::CameBack => {
            "The browser had lost entries of open jobs. What the backup file had is back. Check what is loose."
        }
        Say::ForgetLost => "I know. Do not show it again",
        Say::OldTab => "A newer version is open in another tab. Load this one again.",
        Say::LastExport => "Last export",
        Say::NeverExported => "Never exported",
        // Update and install.
        Say::UpdateReady => "A new version is ready. It is taken only when you say so.",
        Say::UpdateNotNow => "Not in the middle of a step. It is offered again later.",
        Say::OfflineReady => "Ready to work without signal.",
        Say::OfflineNotYet => "Not yet ready for no signal. Stay on this page for a moment.",
        Say::InstallSay => "Put it on the home screen, so that the phone keeps the data.",
        Say::VersionLabel => "Version",
        Say::CrashTitle => "Something broke",
        Say::CrashSay => "Load the page again. What was kept is still here; export it to be safe.",
        // Problems of a record.
        Say::ProblemsTitle => "To be settled",
        Say::ProblemConflict => {
            "Two phones told this differently. The safer one counts until you choose."
        }
        Say::ProblemLost => "This phone had more entries and lost them. Check every fastener.",
        Say::ProblemMissing => "Some entries have not arrived. Import the file of the other phone.",
        Say::ProblemUnknown => "Written by a newer version. It can be read here, not changed.",
        Say::ProblemUnreadable => "Something could not be read. It was set aside, not thrown away.",
        Say::ProblemClock => {
            "The clock of one device was wrong. The order is taken from the entries."
        }
        Say::ProblemCircle => {
            "Entries claim to have seen what came after them. The file is forged or broken."
        }
        Say::ProblemEdited => "One entry is there twice with different contents.",
        // Import errors.
        Say::ImportNotOurs => "This is not a Hubslate file. Nothing was changed.",
        Say::ImportNewer => "The file is from a newer version. Update first. Nothing was changed.",
        Say::ImportCutOff => "The file is cut off. Ask for it again. Nothing was changed.",
        Say::ImportEdited => {
            "The file was changed after it was made: its digest differs. Nothing was changed."
        }
        Say::ImportCalledOff => "Stopped. Nothing was changed.",
        Say::ImportTooLong => {
            "With this file a job would be too long to read. Nothing was changed."
        }
        Say::JobNotRead => "This job could not be read.",
        Say::JobTooLong => "This job was not read: it is too long.",
        Say::LookAtTheCar => "Nobody knows what is loose. Look at the car.",
        Say::BeingRead => "It is being read. That can take a minute.",
        Say::ReadTooLong => "Read it all the same",
        Say::StopWork => "Stop",
        Say::ReadTooLongSay => "Until it is read, nothing else goes on here.",
        Say::ImportTangled => {
            "The entries of this file join too often: the limit is 10,000,000. Nothing was changed."
        }
        Say::ImportOverlap => {
            "Files in this zip overlap, as no program writes them. Nothing was changed."
        }
        Say::ImportOtherKind => {
            "A log in this file is not of the kind that its name says. Nothing was changed."
        }
        Say::ImportConflict => "This file says two things under one entry. Nothing was changed.",
        Say::ImportDiffers => {
            "An entry of this file is here with other contents. Nothing was changed."
        }
        Say::ImportEases => {
            "With this file an open job reads safer than it does here. Nothing was changed yet. Look at the car first."
        }
        Say::ImportAnyway => "I looked: bring it in",
        Say::ImportNotKept => "The file could not be kept: no room. Nothing was changed.",
        Say::ImportNotHere => "The file cannot be saved in this browser. Nothing was changed.",
        Say::ImportUnfinished => "Storage failed: not all of this file was saved. Import it again.",
        Say::ImportRescue => {
            "From a rescue file. Photos, settings and unfinished input do not come with it."
        }
        Say::ImportNoNews => "Everything in this file was here already.",
        Say::ImportPhotosMissing => "Some pictures are not in the file. The record is whole.",
        Say::ImportPhotosGone => "Some photos are not in the file.",
        Say::ExportDone => "The file is made. See that it has arrived.",
        Say::ExportFailed => "The file could not be made. Try again, or print the report.",
        Say::ShareNotHere => "This browser cannot share. Export the file instead.",
        // Settings.
        Say::SettingsTitle => "Settings",
        Say::SettingsUnits => "Units",
        Say::SettingsMark => "Decimal mark",
        Say::SettingsHand => "Hand that holds the phone",
        Say::SettingsSound => "Sound",
        Say::SettingsNight => "Screen",
        Say::SettingsName => "Technician's name",
        Say::SettingsShop => "Shop's name, phone and address",
        Say::SettingsLanguage => "Language",
        Say::SettingsCurrency => "Currency",
        Say::VanKit => "Van kit",
        Say::Wrenches => "Torque wrenches",
        Say::WrenchName => "Name of the wrench",
        Say::WrenchLow => "Lowest marked torque",
        Say::WrenchHigh => "Highest marked torque",
        Say::WrenchDue => "Calibration due",
        Say::WrenchUnit => "Unit on the wrench",
        Say::NoWrenches => "No wrench yet. Add those that are in the van.",
        Say::DialTitle => "Dial gauge",
        Say::DialDivision => "One division",
        Say::DialTurn => "Divisions in one turn",
        Say::DialKind => "Plunger or lever",
        Say::DialDue => "Dial check due",
        Say::NameNeeded => "Enter your name once. It appears on every entry and on the report.",
        // How it works.
        Say::HelpTitle => "How it works",
        Say::HelpHold => {
            "One thing on each screen, one black key. Every tap is kept before it reads as done."
        }
        Say::HelpThree => "Yes, no, not done. What is not touched counts as not done, never as no.",
        Say::HelpOrder => {
            "Only six hold points stop you. Everything else may be told later and in any order."
        }
        Say::HelpMaker => "The maker's service information wins over everything here.",
        Say::HelpDefaults => "What has no source says that it is common practice.",
        Say::HelpPrivate => "Nothing leaves this phone unless you export it.",
        Say::NotRunOnIos => "Not tried on iPhone or iPad.",
        // Pack.
        Say::BookingHint => "Paste the message here",
        Say::BookingFound => "Found in the message",
        Say::Complaint => "Complaint, word for word",
        Say::VinCheckFails => {
            "The check digit of this VIN is wrong. Outside North America that can be right: compare again."
        }
        Say::VinShort => "A VIN has 17 characters, without I, O and Q.",
        Say::VinGood => "The check digit is right.",
        Say::PlateHint => "Plate as on the car",
        Say::KnownFamily => "Cards of this kind of car are here. Confirm each.",
        Say::CardsOpen => "Cards still open",
        Say::NotFoundSay => "\"Not found\" is kept as an answer and printed.",
        Say::RepairPrice => "Whole repair, tax included",
        Say::RefitPrice => "Inspection and reassembly, tax included",
        Say::ReadyAll => "Nothing stands in the way.",
        Say::ReadyMissing => "Missing from the kit",
        Say::ReadyWrench => "Wrenches",
        Say::DialTooCoarse => {
            "This dial cannot settle this limit: one division of play is no longer proven within, \
             and good hubs will read over. Take a finer dial."
        }
        Say::ReadyGauge => "What this gauge can prove",
        Say::CornerOrder => "In the order of work",
        // Spec cards.
        Say::CardValue => "Value",
        Say::CardUnit => "Unit",
        Say::CardThenAngle => "Then angle",
        Say::CardStage => "First stage",
        Say::CardThread => "Thread",
        Say::CardDry => "Dry",
        Say::CardOiled => "Oiled",
        Say::CardNewPart => "New each time",
        Say::CardReuse => "May be used again",
        Say::CardLocker => "Threadlocker",
        Say::CardDocument => "Document",
        Say::CardPage => "Page or procedure",
        Say::CardDate => "Looked up on",
        Say::CardWho => "Looked up by",
        Say::CardPicture => "Picture of the page",
        Say::CardPosition => "Last torque of the axle nut",
        Say::CardMethod => "Method",
        Say::CardPlace => "Where the tip stands",
        Say::CardForce => "How hard to push and pull",
        Say::CardCarried => "Document, page and name are taken from the last card.",
        Say::CardNotFound => "Not found",
        Say::CardPlausible => "Far from the usual for this kind of fastener. Read the page again.",
        Say::CardWins => "The maker's service information wins.",
        Say::MethodPadsOut => "Pads out, caliper tied up, rotor flat",
        Say::MethodRotorOff => "Rotor off",
        Say::MethodWheelOn => "Wheel on",
        Say::MethodOther => "Another method",
        Say::MethodHouse => "Pads out, rotor flat: common practice, no source",
        Say::PlacePilot => "Wheel pilot, near the center",
        Say::PlaceFlange => "Hub flange",
        Say::PlaceRotor => "Rotor edge",
        Say::PlaceWheel => "Wheel rim or tire",
        Say::PlaceOther => "Another place",
        // Vehicle choices.
        Say::FixingNuts => "Wheel nuts on studs",
        Say::FixingBolts => "Wheel bolts",
        Say::PowerEngine => "Engine",
        Say::PowerHybrid => "Hybrid",
        Say::PowerElectric => "Electric",
        Say::ParkingFront => "Front axle",
        Say::ParkingRear => "Rear axle",
        Say::ParkingElectric => "Electric, on the rear axle",
        Say::ParkingShaft => "Gearbox or shaft only",
        Say::CaliperSliding => "Sliding caliper",
        Say::CaliperFixed => "Fixed caliper",
        Say::EpbCaution => {
            "Electric parking brake: service mode before the caliper moves, battery supported, ignition left alone."
        }
        Say::ElectricCaution => {
            "Electric car: ready is silent. Key far away, auto-hold off. Orange cables are high voltage."
        }
        Say::ElectricJack => {
            "Electric car: jack only at the maker's pads, never on the battery case."
        }
        Say::AirCaution => {
            "Air suspension: set it to jacking as the maker says, or it levels itself."
        }
        // Questions and swings.
        Say::Untouched => "Not touched means not done",
        Say::FiveQuestions => "Five questions first",
        Say::MoreQuestions => "Not clear yet. A few more.",
        Say::CountSay => "Nothing to touch while it counts.",
        Say::CountSwings => "Swings",
        Say::FeltAsk => "What did your hands feel?",
        Say::PushSay => "Push in hard. Swing five times over a quarter turn. Keep pushing.",
        Say::PullSay => "Pull out hard. Swing five times over a quarter turn. Keep pulling.",
        Say::ReadNow => "Read",
        Say::HeatPoint => "Same spot on both hubs",
        Say::Odometer => "Odometer",
        Say::HubHeat => "Hub temperature",
        // Dial and rounds.
        Say::DialReading => "Dial",
        Say::BezelToZero => "Still pushing: turn the bezel to zero.",
        Say::PushWord => "PUSH, swing",
        Say::PullWord => "PULL, swing",
        Say::ReadPushWord => "READ, keep pushing",
        Say::ReadPullWord => "READ, keep pulling",
        Say::FirstReading => "Pushed in",
        Say::SecondReading => "Pulled out",
        Say::PlayLabel => "Play",
        Say::Divisions => "divisions",
        Say::WrapSay => "The needle passed zero. The shorter way round is taken.",
        Say::AskTurns => {
            "The needle may have gone another way round. Move it again slowly, watch the small pointer: how far did it go?"
        }
        Say::TakenWith => "Of this set must be known",
        Say::TooFar => "That is not on this dial. Look again.",
        Say::RoundsApart => "The rounds lie too far apart. Set the dial up again.",
        Say::RoundsRise => {
            "They rise: the rollers are not seated yet, or the base creeps. Swing more, look at the base."
        }
        Say::RoundsFall => "They fall: the rollers are just seating. Swing more, then read again.",
        Say::RoundsScatter => "They go up and down: the tip, the base or the pull differs.",
        Say::BaseGives => "The base gives more than a division. Set it elsewhere on the knuckle.",
        Say::UncertaintyLabel => "Uncertainty",
        Say::MedianLabel => "Median of the rounds, a check of the rig",
        Say::BeforeLabel => "Before",
        Say::AfterLabel => "After",
        Say::LimitLabel => "Limit",
        Say::ReadingMarked => "The axle nut had been loosened: the reading is marked.",
        Say::NoReading => "No reading was taken.",
        Say::SecondSetSay => {
            "Too near the limit to call. Base off, set it elsewhere, take three more rounds."
        }
        // Decision and the owner.
        Say::RestsOn => "It rests on",
        Say::WasNotDone => "Not done",
        Say::NoMakerLimit => "No maker limit found",
        Say::HouseLimit => "House limit (common practice, no source)",
        Say::WithinNotProven => "Within, but not proven",
        Say::OwnerPage => "For the owner",
        Say::OwnerAsk => "May we do this repair?",
        Say::OwnerAskInspect => "May we open and inspect it?",
        Say::Amount => "Amount",
        Say::IncludesRefit => {
            "If you decline the repair, you pay this amount for inspection and reassembly."
        }
        Say::ConsentHow => "How was the answer given?",
        Say::ConsentName => "Name of the one who answered",
        Say::ConsentAddress => "Phone or address it came from",
        Say::SignBox => "Sign in the box with a finger.",
        Say::SignRefused => "Would not sign",
        Say::PageLocked => "The page is locked while the owner reads.",
        // Turning fasteners.
        Say::SnugPass => "Snug pass",
        Say::FinalPass => "Final pass",
        Say::CheckPass => "Check pass: once round, no more.",
        Say::StarOrder => "Star order",
        Say::CrossOrder => "Crosswise",
        Say::SetTo => "Set the wrench to",
        Say::OnTheCard => "On the card",
        Say::NoWrenchFits => "No wrench on board fits this torque.",
        Say::UseNewNut => "Use a new nut",
        Say::UseNewBolts => "Use new bolts",
        Say::NoImpact => "No impact tool on the final torque.",
        Say::WhichWrench => "Which wrench?",
        Say::CalibrationOver => "The calibration of this wrench is overdue.",
        // Proving and handing over.
        Say::ProofPassed => "Not over the limit, smooth and quiet.",
        Say::ProofUnmeasured => "Smooth and quiet by hand. The play was not measured.",
        Say::FinishedNotProved => "Every fastener is at spec. Not everything was proved:",
        Say::NothingOpened => "Nothing was opened.",
        Say::ProofWithinNotProven => {
            "Within the limit but not proven. It is printed, it does not block."
        }
        Say::ProofFailed => "The new part does not pass. The vehicle stays at STOP.",
        Say::ProofRecheck => "Check axle nut torque, hub bolts, seat, then the part itself.",
        Say::SignStillThere => "A sign is still there. Another corner or another part?",
        Say::RetorqueDate => "By date",
        Say::RetorqueDistance => "By distance",
        Say::RecheckDefault => "A month is common practice, no source.",
        Say::RetorqueDefault => {
            "Earliest of the published figures, unless the card or the shop says otherwise."
        }
        Say::PartNumber => "Part number",
        Say::PartLot => "Lot or date code",
        Say::ChooseEnding => "How does the job end?",
        Say::EndedNow => "The job has ended.",
        Say::ReportReady => "The report is ready.",
        Say::ReminderRetorque => "Re-torque due",
        Say::ReminderRecheck => "Check again due",
        // Names a screen reader speaks.
        Say::AriaDial => "Dial gauge",
        Say::AriaStar => "Wheel nuts in star order",
        Say::AriaCorner => "Corners of the vehicle, seen from above",
        Say::AriaStrip => "Where you are",
        Say::AriaKeys => "Keys of this step",
        Say::AriaSignature => "Signature",
        Say::AriaStorage => "Storage",
        Say::AriaProblem => "Problem",
        Say::AriaBar => "Before and after against the limit",
        Say::AriaPicture => "Picture of this step",
        Say::ScreenStaysOn => "The screen stays on",
        Say::ScreenMayGoOff => "The screen may go off: this phone does not allow more",
    }
}
