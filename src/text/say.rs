//! What the shell of the app says: keys and sentences that belong to no single step.

use super::table::sentences;

sentences! {
    /// A key label or a sentence of the shell.
    pub enum Say, say {
        KEYS {
            // Home and the job.
            NewJob => "New job",
            PracticeJob => "Practice job",
            ChoosePractice => "Which practice car?",
            TryPractice => "Try a practice car",
            HomeMore => "Ended jobs and more",
            AnotherCar => "Another car",
            TryIt => "Try it",
            HoldPush => "Hold: push",
            HoldPull => "Hold: pull",
            HoldKnuckle => "Hold: push the knuckle",
            ShowTruth => "What this car had",
            StartAtHome => "Start at home",
            StartAtCar => "Start at the car",
            OpenJob => "Open the job",
            ThrowAway => "Delete it",
            ShopSheet => "Jobs on this phone",
            Settings => "Settings",
            // Answering a step.
            Yes => "Yes",
            No => "No",
            NotDone => "Not done",
            CannotBecause => "Cannot, because…",
            WillNotGo => "It won't go",
            Done => "Done",
            Keep => "Save",
            NotFound => "Not found",
            LookedUpAgain => "Looked up again today",
            NotLookedUpSince => "Not looked up again",
            NotSafeHere => "Not safe here",
            TakePhoto => "Take a photo",
            Clear => "Clear",
            CustomerYes => "Customer approves",
            YesSpoken => "Verbal approval",
            CustomerNo => "Customer declines",
            ShowCustomer => "Show the customer",
            BackToTech => "Back to technician",
            StartCount => "Start the count",
            WentWrong => "Something is wrong",
            RecordIt => "Record it",
            StartPassAgain => "Start again at\u{a0}1",
            NoFigureFound => "No spec found",
            SecondSet => "Take a second set",
            NotZeroed => "Dial was not at zero",
            Zeroed => "Dial was set to zero",
            UndoEnd => "Reopen the job",
            StillAtZero => "Needle still at 0",
            PushReading => "Save push reading",
            MeasureAgain => "Measure again",
            // Moving about.
            Undo => "Undo",
            Note => "Note",
            NotesTitle => "Notes",
            KeepNote => "Save the note",
            Pause => "Pause",
            Resume => "Resume",
            Where => "All steps",
            LooseList => "Loose list",
            ShowReport => "The report",
            More => "More",
            Why => "Why",
            Back => "Back",
            Next => "Next",
            Close => "Close",
            GoThere => "Go to that step",
            EndNow => "End the job here",
            ExportAndEnd => "Export and end",
            // Pad and stepper.
            PadMinus => "Minus one",
            PadPlus => "Plus one",
            PadMinusFive => "Minus five",
            PadPlusFive => "Plus five",
            PadKeys => "Number pad",
            PadDial => "Dial",
            PadDelete => "Delete",
            PadMark => "Decimal mark",
            PadUnit => "Change the unit",
            // Files and updates.
            Export => "Export the job",
            ExportAll => "Export all jobs",
            Import => "Import a file",
            Print => "Print",
            TakeUpdate => "Update now",
            Calendar => "Add to the calendar",
            // Choices in settings.
            UnitsMetric => "Metric: mm, N·m, km",
            UnitsUs => "US: in, lb-ft, miles",
            MarkPoint => "Point: 0.1",
            MarkComma => "Comma: 0,1",
            SoundOn => "Sound on",
            SoundOff => "Sound off",
            TestSound => "Test the sound",
            NightOn => "Dark screen",
            NightOff => "Light screen",
            AddWrench => "Add a wrench",
            RemoveWrench => "Remove this wrench",
            KeepStorage => "Protect the data",
        }
        WORDS {
            // Home.
            AppName => "Hubslate",
            HomeEmpty =>
                "No job yet. Start one at home with the booking message, or at once at the car.",
            ListBeingRead => "The list of jobs is being read.",
            AppSay =>
                "Hubslate takes you through checking and replacing a wheel bearing step by step, records every answer, and works without a signal.",
            OfflineNotYet => "Not ready to work offline yet. Stay on this page for a moment.",
            OfflineReady => "Ready to work without a signal.",
            HomeMakeSafe => "Make safe first",
            HomeAtCar => "At the car",
            HomeCustomer => "Customer must answer",
            HomeDue => "Due",
            HomeLater => "Due later",
            HomePrepare => "Prepare",
            HomeEnded => "Ended jobs",
            FindHint => "Plate or name (3 characters)",
            PageUnknown => "This page does not exist. Go back to the jobs.",
            NotOnThisPhone => "There is no such job on this phone.",
            Practice => "Practice",
            PracticeSay => "An invented car. Do the full job, then delete it.",
            ThrowAwaySay =>
                "Hold the key to delete this practice job. It cannot be brought back.",
            HoldToConfirm => "Hold until the ring is full",
            NoPlate => "No plate yet",
            NoName => "No name yet",
            // Where you are, undo, coming back.
            InterruptedPass =>
                "The pass was interrupted. Start again at 1, so that none is forgotten.",
            RowNotYet => "Not yet",
            NotAnswered => "–",
            SignsSay => "Tap what you noticed.",
            StepsDone => "Done",
            StepsOpen => "Open",
            NoNotes => "No note yet.",
            SavedAtStep => "The note belongs to this step.",
            // Loose list.
            LooseTitle => "Loose list",
            LooseWord => "loose",
            NothingLoose => "Nothing is loose",
            RowsStayOpen => "Rows above that were not touched stay open and come next.",
            Incomplete =>
                "Entries of this job are missing: more may be loose. Import its file again; until then check every fastener.",
            ReadOnly => "A newer version wrote a part of this job. Update the app to change it.",
            LooseSay => "Off or loosened and not yet back at spec.",
            LooseBlocks => "With anything loose the job can end only as left unfinished.",
            WhoTakesCharge => "Who takes charge of the car?",
            MustNotBeDriven => "The car must not be driven.",
            // Trouble at a step.
            HowManyLoose => "How many were loose?",
            WhichFastener => "Which one",
            PartNeeded => "Part needed",
            MinutesMore => "Minutes more",
            CostsMore => "Costs more, in the currency of the price",
            AskFurtherYes =>
                "Tell the customer what broke, what it needs and costs. Work goes on after approval.",
            FurtherRefused =>
                "The customer declined. It is not at spec, so the car is not released.",
            WillNotGoTitle => "It won't go",
            WillNotGoSay =>
                "Say what prevents it. It goes into the record, and the step stays open.",
            WhyNotDone => "Why was it not done?",
            NoFigureFoundSay =>
                "Say why no spec was found. Axle nut, hub bolts, caliper and wheel cannot close without one.",
            // Storage.
            StorageSaved => "Saved",
            StorageSavedNotYetSafe => "Saved, not yet secure",
            StorageKeeping => "Saving…",
            StorageNotSaved => "Not saved",
            StorageDenied => "This browser saves nothing. Export before you close it.",
            StorageOnlyLocal =>
                "This browser saves taps late: a crash can lose the last minute. Export often.",
            StorageOnlyBackup =>
                "The browser's database cannot be used: taps are in the backup file alone, photos nowhere. Export often.",
            StorageFull =>
                "The phone's storage is full. Export jobs, then make room. New taps are not safe.",
            StorageNotPromised =>
                "The browser may clear old data. Install the app and export often.",
            StoragePromised => "The browser has promised to keep the data.",
            StorageWhere =>
                "All data is on this phone only. It leaves in the files that you export.",
            OtherTab =>
                "This job is open in another tab too. Both see each other's taps.",
            OldTab => "A newer version is open in another tab. Load this one again.",
            ThrownAway =>
                "The browser deleted this app's data while it was open. Open jobs were saved again, photos are lost: export now.",
            CameBack =>
                "The browser had lost entries of open jobs. What the backup file had is back. Check what is loose.",
            ForgetLost => "I know. Do not show it again",
            // Update and install.
            UpdateReady => "A new version is ready. It installs only when you say so.",
            VersionLabel => "Version",
            // Problems of a record.
            ProblemsTitle => "To resolve",
            ProblemConflict =>
                "Two phones recorded two things. The more careful one counts until you choose.",
            ProblemClock =>
                "The clock of one phone was wrong. The order is taken from the entries.",
            ProblemMissing => "Some entries have not arrived. Import the file of the other phone.",
            ProblemLost => "This phone had more entries and lost them. Check every fastener.",
            ProblemUnknown => "Written by a newer version. It can be read here, not changed.",
            ProblemUnreadable => "Something could not be read. It was set aside, not thrown away.",
            ProblemEdited => "One entry is there twice with different contents.",
            ProblemCircle =>
                "Entries claim to have seen what came after them. The file is forged or broken.",
            // Import errors.
            ImportNotOurs => "This is not a Hubslate file. Nothing was changed.",
            ImportNewer => "The file is from a newer version. Update first. Nothing was changed.",
            ImportCutOff => "The file is cut off. Ask for it again. Nothing was changed.",
            ImportEdited =>
                "The file was changed after it was made: its digest differs. Nothing was changed.",
            ImportCalledOff => "Stopped. Nothing was changed.",
            ImportRestStopped =>
                "Stopped. The jobs that came in are whole. Import the file again for the rest.",
            ImportRestRefused =>
                "The rest of the file could not be saved. The jobs that came in are whole. Import it again for the rest.",
            ImportTooLong => "With this file a job would be too long to read. Nothing was changed.",
            JobNotRead => "This job could not be read.",
            JobTooLong => "This job was not read: it is too long.",
            LookAtTheCar => "What is loose is unknown. Look at the car.",
            BeingRead => "The job is being read. That can take a minute.",
            ReadTooLong => "Read it anyway",
            ReadTooLongSay => "Until it is read, nothing else works here.",
            StopWork => "Stop",
            ImportTangled =>
                "The entries of this file join too often: the limit is 10,000,000. Nothing was changed.",
            ImportOverlap =>
                "Files in this zip overlap, as no program writes them. Nothing was changed.",
            ImportOtherKind =>
                "A log in this file is not of the kind that its name says. Nothing was changed.",
            ImportConflict => "This file says two things under one entry. Nothing was changed.",
            ImportDiffers =>
                "An entry of this file is here with other contents. Nothing was changed.",
            ImportEases =>
                "With this file an open job reads safer than it does here. Nothing was changed yet. Look at the car first.",
            ImportAnyway => "I checked: import it",
            ImportNotSaved => "The file could not be saved: no room. Nothing was changed.",
            ImportNotHere => "The file cannot be saved in this browser. Nothing was changed.",
            ImportUnfinished => "Storage failed: not all of this file was saved. Import it again.",
            ImportRescue =>
                "From a rescue file. Photos, settings and unfinished input do not come with it.",
            ImportNoNews => "Everything in this file was here already.",
            ImportPhotosMissing => "Some photos are not in the file. The record is complete.",
            ImportPhotosGone => "Some photos are not in the file.",
            ExportDone => "File created. Make sure it was delivered.",
            ExportFailed => "The file could not be made. Try again, or print the report.",
            // Settings.
            SettingsTitle => "Settings",
            SettingsUnits => "Units",
            SettingsMark => "Decimal mark",
            SettingsSound => "Sound",
            SettingsNight => "Screen",
            SettingsName => "Technician's name",
            SettingsLanguage => "Language",
            SettingsCurrency => "Currency",
            VanKit => "Van kit",
            ScreenPart => "Screen, sound, units",
            NamePart => "Name and report",
            PricePart => "Prices and invoices",
            Wrenches => "Torque wrenches",
            WrenchName => "Name of the wrench",
            WrenchLow => "Lowest marked torque",
            WrenchHigh => "Highest marked torque",
            WrenchUnit => "Unit on the wrench",
            NoWrenches => "No wrench yet. Add those that are in the van.",
            DialTitle => "Dial indicator",
            DialDivision => "One division",
            DialTurn => "Divisions in one turn",
            DialKind => "Plunger or lever",
            NameNeeded => "Enter your name once. It appears on every entry and on the report.",
            // Pack.
            BookingHint => "Paste the message here",
            BookingFound => "Found in the message",
            Complaint => "Complaint, word for word",
            VinShort => "A VIN has 17 characters, without I, O and Q.",
            KnownFamily => "Specs for this kind of car are here. Confirm each.",
            SpecsOpen => "Specs still open",
            NotFoundSay => "\"Not found\" is saved as an answer and printed.",
            RepairPrice => "Full repair, tax included",
            RefitPrice => "Inspection and reassembly, tax included",
            ReadyMissing => "Missing from the kit",
            ReadyWrench => "Wrenches",
            ReadyGauge => "What this dial can prove",
            DialTooCoarse =>
                "This dial cannot settle this limit: one division of play is no longer proven within, and good hubs will read over. Take a finer dial.",
            // Spec specs.
            SpecValue => "Value",
            SpecUnit => "Unit",
            SpecDocument => "Document",
            SpecPage => "Page or procedure",
            SpecDate => "Looked up on",
            SpecWho => "Looked up by",
            SpecPosition => "Last torque of the axle nut",
            SpecMethod => "Method",
            SpecPlace => "Tip position",
            SpecNotFound => "Not found",
            // Cautions of a vehicle.
            CaliperSliding => "Sliding caliper",
            CaliperFixed => "Fixed caliper",
            EpbCaution =>
                "Electric parking brake: take the scan tool. Service mode before the caliper moves, battery supported, key left off.",
            ElectricCaution =>
                "Electric car: ready is silent. Key far away, auto-hold off. Orange cables are high voltage.",
            // Questions and swings.
            ScreenMayGoOff => "The screen may go off: this phone does not keep it on.",
            PushWord => "PUSH, swing",
            PullWord => "PULL, swing",
            ReadPushWord => "READ, keep pushing",
            ReadPullWord => "READ, keep pulling",
            Odometer => "Odometer",
            // Dial and rounds.
            FirstReading => "Pushed in",
            SecondReading => "Pulled out",
            PlayLabel => "Play",
            Divisions => "divisions",
            WrapSay => "Past zero: the shorter way counts.",
            AskTurns =>
                "The needle may have gone another way round. Move it again slowly, watch the small pointer: how far did it go?",
            TooFar => "That is not on this dial. Look again.",
            TakenWith => "Note about this set",
            RoundsApart => "The cycles are too far apart. Set the dial up again.",
            RoundsRise =>
                "Readings rise: the bearing is not seated, or the base creeps. Swing more, check the base.",
            RoundsFall => "Readings fall: the bearing is settling. Swing more, then read again.",
            RoundsScatter => "Readings go up and down: tip, base or pull differs.",
            MedianLabel => "Median of the cycles, a setup check",
            BeforeLabel => "Before",
            AfterLabel => "After",
            SecondSetSay =>
                "Too near the limit to call. Base off, set it elsewhere, take three more cycles.",
            // Decision and the customer.
            RestsOn => "Based on",
            WasNotDone => "Not done",
            CustomerAsk => "May we do this repair?",
            CustomerAskInspect => "May we open and inspect it?",
            IncludesRefit =>
                "If you decline the repair, you pay this amount for inspection and reassembly.",
            SignBox => "Sign in the box with a finger.",
            SignRefused => "Refused to sign",
            PageLocked => "Page locked while the customer reads.",
            NoWrenchFits => "No van wrench fits this torque.",
            // Proving and handing over.
            ProofPassed => "Not over the limit, smooth and quiet.",
            ProofUnmeasured => "Smooth and quiet by hand. The play was not measured.",
            FinishedNotProved => "Every fastener is at spec. Not everything was proved:",
            NothingOpened => "Nothing was opened.",
            ProofWithinNotProven =>
                "Within the limit but not proven. It is printed, it does not block.",
            ProofFailed => "The new part does not pass. The vehicle stays at STOP.",
            RetorqueDate => "By date",
            RetorqueDistance => "By distance",
            RetorqueDefault =>
                "Earliest of the published values, unless the spec or the shop says otherwise.",
            RecheckDefault => "A month is common practice, no source.",
            PartNumber => "Part number",
            PartLot => "Lot or date code",
            EndedNow => "The job has ended.",
            ReportReady => "The report is ready.",
            // Names a screen reader speaks.
            AriaCorner => "Corners of the vehicle, seen from above",
            AriaSignature => "Signature",
            AriaBar => "Before and after against the limit",
        }
    }
}
