//! What the shell of the app says: keys and sentences that belong to no single step.

/// Declares the sayings in two lists: labels of keys, and everything else.
macro_rules! sayings {
    (keys { $($(#[$kmeta:meta])* $key:ident,)+ } words { $($(#[$wmeta:meta])* $word:ident,)+ }) => {
        /// A key label or a sentence of the shell.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum Say { $($(#[$kmeta])* $key,)+ $($(#[$wmeta])* $word,)+ }

        impl Say {
            /// The labels of keys, which must be short.
            pub const KEYS: &'static [Self] = &[$(Self::$key),+];

            /// Everything else.
            pub const WORDS: &'static [Self] = &[$(Self::$word),+];
        }
    };
}

sayings! {
    keys {
        // Home and the job.
        /// New job.
        NewJob,
        /// Find a job.
        FindJob,
        /// Practice job.
        PracticeJob,
        /// Which practice car?
        ChoosePractice,
        /// Another car.
        AnotherCar,
        /// Try it on the practice car.
        TryIt,
        /// Hold: push.
        HoldPush,
        /// Hold: pull.
        HoldPull,
        /// Hold: push the knuckle.
        HoldKnuckle,
        /// What this car had.
        ShowTruth,
        /// Start at home.
        StartAtHome,
        /// Start at the car.
        StartAtCar,
        /// Open the job.
        OpenJob,
        /// Throw it away.
        ThrowAway,
        /// Jobs on this phone.
        ShopSheet,
        /// Settings.
        Settings,
        /// How it works.
        Help,
        // Answering a step.
        /// Yes.
        Yes,
        /// No.
        No,
        /// Not done.
        NotDone,
        /// Not done, because…
        NotDoneBecause,
        /// Cannot, because…
        CannotBecause,
        /// It won't go.
        WillNotGo,
        /// Done.
        Done,
        /// Keep.
        Keep,
        /// Keep the number.
        KeepNumber,
        /// Same.
        Same,
        /// Not found.
        NotFound,
        /// Looked up again today.
        LookedUpAgain,
        /// Not looked up again.
        NotLookedUpSince,
        /// All right as it is.
        AllYes,
        /// Not safe here.
        NotSafeHere,
        /// Take a picture.
        TakePicture,
        /// Choose a picture.
        ChooseFile,
        /// Clear.
        Clear,
        /// Sign here.
        SignHere,
        /// Owner says yes.
        OwnerYes,
        /// The owner's yes by word.
        YesSpoken,
        /// Owner says no.
        OwnerNo,
        /// Show the owner.
        ShowOwner,
        /// Back to the work.
        BackToTech,
        /// Start the count.
        StartCount,
        /// Stop the count.
        StopCount,
        /// Count again.
        CountAgain,
        /// All snug.
        Snug,
        /// It clicked.
        Clicked,
        /// It is cracked.
        Cracked,
        /// Something is wrong.
        WentWrong,
        /// Record it.
        RecordIt,
        /// Start again at 1.
        StartPassAgain,
        /// No figure found.
        NoFigureFound,
        /// Take a second set.
        SecondSet,
        /// Dial was not at zero.
        NotZeroed,
        /// Dial was set to zero.
        Zeroed,
        /// Take back the end.
        UndoEnd,
        /// The needle is still at 0.
        StillAtZero,
        /// Keep push reading.
        PushReading,
        /// Keep pull reading.
        PullReading,
        /// Measure again.
        MeasureAgain,
        // Moving about.
        /// Undo.
        Undo,
        /// Do it again.
        Redo,
        /// Note.
        Note,
        /// Picture.
        Photo,
        /// Pause.
        Pause,
        /// Go on.
        Resume,
        /// Where am I.
        Where,
        /// Loose list.
        LooseList,
        /// The report.
        ShowReport,
        /// More.
        More,
        /// Why.
        Why,
        /// Back.
        Back,
        /// Next.
        Next,
        /// Close.
        Close,
        /// Cancel.
        Cancel,
        /// Try again.
        Retry,
        /// Go to that step.
        GoThere,
        /// Done at another time.
        TellLater,
        /// End the job here.
        EndNow,
        /// Export and end.
        ExportAndEnd,
        // Pad and stepper.
        /// Minus one.
        PadMinus,
        /// Plus one.
        PadPlus,
        /// Minus five.
        PadMinusFive,
        /// Plus five.
        PadPlusFive,
        /// Number pad.
        PadKeys,
        /// Dial.
        PadDial,
        /// Delete.
        PadDelete,
        /// Decimal mark.
        PadMark,
        /// Plus or minus.
        PadSign,
        /// Change the unit.
        PadUnit,
        // Files and updates.
        /// Export the job.
        Export,
        /// Export all jobs.
        ExportAll,
        /// Import a file.
        Import,
        /// Print.
        Print,
        /// Share.
        Share,
        /// Take the new version.
        TakeUpdate,
        /// Later.
        Later,
        /// Load again.
        Reload,
        /// Save what was set by.
        SaveSetAside,
        /// Add to the calendar.
        Calendar,
        /// Erase the owner.
        EraseOwner,
        // Choices in settings.
        /// Metric: mm, N·m, km.
        UnitsMetric,
        /// US: in, lb·ft, miles.
        UnitsUs,
        /// Point: 0.1.
        MarkPoint,
        /// Comma: 0,1.
        MarkComma,
        /// Right hand.
        RightHand,
        /// Left hand.
        LeftHand,
        /// Sound on.
        SoundOn,
        /// Sound off.
        SoundOff,
        /// Test the sound.
        TestSound,
        /// Dark screen.
        NightOn,
        /// Light screen.
        NightOff,
        /// Add a wrench.
        AddWrench,
        /// Remove this wrench.
        RemoveWrench,
        /// Ask to keep data.
        KeepStorage,
    }
    words {
        // Home.
        /// Hubslate.
        AppName,
        /// No job yet. Start one at home with the booking message, or at once at the car.
        HomeEmpty,
        /// Next.
        HomeNext,
        /// Overdue.
        HomeOverdue,
        /// Open jobs.
        HomeOpen,
        /// Ended jobs.
        HomeEnded,
        /// Three characters of plate or name.
        FindHint,
        /// There is no such job on this phone.
        NotOnThisPhone,
        /// Practice.
        Practice,
        /// An invented car. Walk the whole job, then throw it away.
        PracticeSay,
        /// Hold the key to throw this practice job away. It cannot be brought back.
        ThrowAwaySay,
        /// Hold until the ring is full.
        HoldToConfirm,
        /// No plate yet.
        NoPlate,
        /// No name yet.
        NoName,
        /// This page does not exist. Go back to the jobs.
        PageUnknown,
        // Where you are, undo, coming back.
        /// You are here.
        YouAreHere,
        /// Taken back.
        Undone,
        /// There is nothing to take back here.
        NothingToUndo,
        /// The pass was interrupted. Start again at 1, so that none is forgotten.
        InterruptedPass,
        /// Welcome back to the same step.
        ComingBack,
        /// The job is paused. Every tap is kept.
        Paused,
        /// When was it done?
        ToldWhen,
        /// Not yet.
        RowNotYet,
        /// No answer so far.
        NotAnswered,
        /// What the road told.
        SignsSay,
        /// Done.
        StepsDone,
        /// Open.
        StepsOpen,
        /// Not done.
        StepsSkipped,
        /// This job has ended. Only looking back is left.
        JobEnded,
        /// The note belongs to this step.
        SavedAtStep,
        // Loose list.
        /// Loose list.
        LooseTitle,
        /// Loose.
        LooseWord,
        /// Nothing is loose.
        NothingLoose,
        /// What "not done" leaves of the rows above it.
        RowsStayOpen,
        /// Entries of this job are missing on this phone.
        Incomplete,
        /// A newer version wrote a part of this job.
        ReadOnly,
        /// Off or loosened and not yet back at its card.
        LooseSay,
        /// With anything loose the job can end only as left unfinished.
        LooseBlocks,
        /// Who takes charge of the car?
        WhoTakesCharge,
        /// The car must not be driven.
        MustNotBeDriven,
        // Trouble at a step.
        /// How many were loose.
        HowManyLoose,
        /// Which one.
        WhichFastener,
        /// Part needed.
        PartNeeded,
        /// Minutes more.
        MinutesMore,
        /// Costs more.
        CostsMore,
        /// The owner is asked before work goes on.
        AskFurtherYes,
        /// The owner said no.
        FurtherRefused,
        /// The owner agreed: mend it.
        MendNow,
        /// It won't go.
        WillNotGoTitle,
        /// Say what stands in the way. It goes into the record, and the step stays open.
        WillNotGoSay,
        /// Stop here. A cracked flange, knuckle or stud means STOP.
        CrackedSay,
        /// Why was it not done?
        WhyNotDone,
        /// Say why no figure was found. It does not serve for axle nut, hub bolts, caliper or wheel.
        NoFigureFoundSay,
        /// It moved. Lower the car and set it up again before anything else.
        MovedOnStand,
        /// Soft or sinking: the car must not move. Look for air or a leak, then pump again.
        PedalSoft,
        /// Hold point.
        HoldPointTitle,
        // Storage.
        /// Kept.
        StorageKept,
        /// Kept, not yet safe.
        StorageKeptNotYetSafe,
        /// Keeping…
        StorageKeeping,
        /// Not kept.
        StorageNotKept,
        /// This browser keeps nothing. Export before you close it.
        StorageDenied,
        /// This browser keeps taps late. Export before you close it.
        StorageOnlyLocal,
        /// The database cannot be used: taps are in the backup file alone, and pictures nowhere.
        StorageOnlyBackup,
        /// The phone's storage is full. Export jobs, then make room. New taps are not kept.
        StorageFull,
        /// This job can only be read. Nothing in it was changed.
        StorageReadOnly,
        /// The browser may clear old data. Install the app and export often.
        StorageNotPromised,
        /// The browser has promised to keep the data.
        StoragePromised,
        /// All data is on this phone only. It leaves in the files that you export.
        StorageWhere,
        /// This job is open in another tab too. Both see each other's taps.
        OtherTab,
        /// A newer version is open in another tab. Load this one again.
        OldTab,
        /// The browser deleted this app's data while it was open. The open job was written back.
        ThrownAway,
        /// The browser had lost entries of open jobs. They are back from the backup file.
        CameBack,
        /// I know. Do not show it again.
        ForgetLost,
        /// Last export.
        LastExport,
        /// Never exported.
        NeverExported,
        // Update and install.
        /// A new version is ready. It is taken only when you say so.
        UpdateReady,
        /// Not in the middle of a step. It is offered again later.
        UpdateNotNow,
        /// Ready to work without signal.
        OfflineReady,
        /// Not yet ready for no signal. Stay on this page for a moment.
        OfflineNotYet,
        /// Put it on the home screen, so that the phone keeps the data.
        InstallSay,
        /// Version.
        VersionLabel,
        /// Something broke.
        CrashTitle,
        /// Load the page again. What was kept is still here; export it to be safe.
        CrashSay,
        // Problems of a record.
        /// To be settled.
        ProblemsTitle,
        /// Two phones told this differently. The safer one counts until you choose.
        ProblemConflict,
        /// Some entries have not arrived. Import the file of the other phone.
        ProblemMissing,
        /// This phone had more entries and lost them. Check every fastener.
        ProblemLost,
        /// Written by a newer version. It can be read here, not changed.
        ProblemUnknown,
        /// Something could not be read. It was set aside, not thrown away.
        ProblemUnreadable,
        /// The clock of one device was wrong. The order is taken from the entries.
        ProblemClock,
        /// One entry is there twice with different contents.
        ProblemEdited,
        /// Entries claim to have seen what came after them. The file is forged or broken.
        ProblemCircle,
        // Import errors.
        /// This is not a Hubslate file. Nothing was changed.
        ImportNotOurs,
        /// The file is from a newer version. Update first. Nothing was changed.
        ImportNewer,
        /// The file is cut off. Ask for it again. Nothing was changed.
        ImportCutOff,
        /// The file was changed after it was made: its digest differs. Nothing was changed.
        ImportEdited,
        /// Stopped. Nothing was changed.
        ImportCalledOff,
        /// With this file a job would be too long to read. Nothing was changed.
        ImportTooLong,
        /// This job could not be read.
        JobNotRead,
        /// This job was not read: it is too long.
        JobTooLong,
        /// Nobody knows what is loose. Look at the car.
        LookAtTheCar,
        /// It is being read. That can take a minute.
        BeingRead,
        /// Read it all the same
        ReadTooLong,
        /// Until it is read, nothing else goes on here.
        ReadTooLongSay,
        /// Stop
        StopWork,
        /// The entries of this file join too often: the limit is 10,000,000. Nothing was changed.
        ImportTangled,
        /// Files in this zip overlap, as no program writes them. Nothing was changed.
        ImportOverlap,
        /// A log in this file is not of the kind that its name says. Nothing was changed.
        ImportOtherKind,
        /// This file says two things under one entry. Nothing was changed.
        ImportConflict,
        /// An entry of this file is here with other contents. Nothing was changed.
        ImportDiffers,
        /// With this file an open job reads safer than it does. Nothing was changed yet.
        ImportEases,
        /// Bring it in anyway.
        ImportAnyway,
        /// The file could not be kept: no room. Nothing was changed.
        ImportNotKept,
        /// The file cannot be saved in this browser. Nothing was changed.
        ImportNotHere,
        /// Storage failed: not all of this file was saved. Import it again.
        ImportUnfinished,
        /// From a rescue file. Photos, settings and unfinished input do not come with it.
        ImportRescue,
        /// Everything in this file was here already.
        ImportNoNews,
        /// Some pictures are not in the file. The record is whole.
        ImportPhotosMissing,
        /// Some photos are not in the file.
        ImportPhotosGone,
        /// The file is made. See that it has arrived.
        ExportDone,
        /// The file could not be made. Try again, or print the report.
        ExportFailed,
        /// This browser cannot share. Export the file instead.
        ShareNotHere,
        // Settings.
        /// Settings.
        SettingsTitle,
        /// Units.
        SettingsUnits,
        /// Decimal mark.
        SettingsMark,
        /// Hand that holds the phone.
        SettingsHand,
        /// Sound.
        SettingsSound,
        /// Screen.
        SettingsNight,
        /// Technician's name.
        SettingsName,
        /// Shop's name, phone and address.
        SettingsShop,
        /// Language.
        SettingsLanguage,
        /// Currency.
        SettingsCurrency,
        /// Van kit.
        VanKit,
        /// Torque wrenches.
        Wrenches,
        /// Name of the wrench.
        WrenchName,
        /// Lowest marked torque.
        WrenchLow,
        /// Highest marked torque.
        WrenchHigh,
        /// Calibration due.
        WrenchDue,
        /// Unit on the wrench.
        WrenchUnit,
        /// No wrench yet. Add those that are in the van.
        NoWrenches,
        /// Dial gauge.
        DialTitle,
        /// One division.
        DialDivision,
        /// Divisions in one turn.
        DialTurn,
        /// Plunger or lever.
        DialKind,
        /// Dial check due.
        DialDue,
        /// Type your name once. It stands on every entry and on the report.
        NameNeeded,
        // How it works.
        /// How it works.
        HelpTitle,
        /// One thing on each screen, one black key. Every tap is kept before it reads as done.
        HelpHold,
        /// Yes, no, not done. What is not touched counts as not done, never as no.
        HelpThree,
        /// Only six hold points stop you. Everything else may be told later and in any order.
        HelpOrder,
        /// The maker's service information wins over everything here.
        HelpMaker,
        /// What has no source says that it is common practice.
        HelpDefaults,
        /// Nothing leaves this phone unless you export it.
        HelpPrivate,
        /// Not tried on iPhone or iPad.
        NotRunOnIos,
        // Pack.
        /// Paste the message here.
        BookingHint,
        /// Found in the message.
        BookingFound,
        /// Complaint, word for word.
        Complaint,
        /// The check digit of this VIN is wrong. Outside North America that can be right: compare again.
        VinCheckFails,
        /// A VIN has 17 characters, without I, O and Q.
        VinShort,
        /// The check digit is right.
        VinGood,
        /// Plate as on the car.
        PlateHint,
        /// Cards of this kind of car are here. Confirm each.
        KnownFamily,
        /// Cards still open.
        CardsOpen,
        /// "Not found" is kept as an answer and printed.
        NotFoundSay,
        /// Whole repair.
        RepairPrice,
        /// Inspection and reassembly.
        RefitPrice,
        /// Nothing stands in the way.
        ReadyAll,
        /// Missing from the kit.
        ReadyMissing,
        /// Wrenches.
        ReadyWrench,
        /// What this gauge can prove.
        ReadyGauge,
    /// This dial cannot settle this limit.
    DialTooCoarse,
        /// In the order of work.
        CornerOrder,
        // Spec cards.
        /// Value.
        CardValue,
        /// Unit.
        CardUnit,
        /// Then angle.
        CardThenAngle,
        /// First stage.
        CardStage,
        /// Thread.
        CardThread,
        /// Dry.
        CardDry,
        /// Oiled.
        CardOiled,
        /// New each time.
        CardNewPart,
        /// May be used again.
        CardReuse,
        /// Threadlocker.
        CardLocker,
        /// Document.
        CardDocument,
        /// Page or procedure.
        CardPage,
        /// Looked up on.
        CardDate,
        /// Looked up by.
        CardWho,
        /// Picture of the page.
        CardPicture,
        /// Last torque of the axle nut.
        CardPosition,
        /// Method.
        CardMethod,
        /// Where the tip stands.
        CardPlace,
        /// How hard to push and pull.
        CardForce,
        /// Document, page and name are taken from the last card.
        CardCarried,
        /// Not found.
        CardNotFound,
        /// Far from the usual for this kind of fastener. Read the page again.
        CardPlausible,
        /// The maker's service information wins.
        CardWins,
        /// Pads out, caliper tied up, rotor flat.
        MethodPadsOut,
        /// Rotor off.
        MethodRotorOff,
        /// Wheel on.
        MethodWheelOn,
        /// Another method.
        MethodOther,
        /// Pads out, rotor flat: common practice, no source.
        MethodHouse,
        /// Wheel pilot, near the center.
        PlacePilot,
        /// Hub flange.
        PlaceFlange,
        /// Rotor edge.
        PlaceRotor,
        /// Wheel rim or tire.
        PlaceWheel,
        /// Another place.
        PlaceOther,
        // Vehicle choices.
        /// Wheel nuts on studs.
        FixingNuts,
        /// Wheel bolts.
        FixingBolts,
        /// Engine.
        PowerEngine,
        /// Hybrid.
        PowerHybrid,
        /// Electric.
        PowerElectric,
        /// Front axle.
        ParkingFront,
        /// Rear axle.
        ParkingRear,
        /// Electric, on the rear axle.
        ParkingElectric,
        /// Gearbox or shaft only.
        ParkingShaft,
        /// Sliding caliper.
        CaliperSliding,
        /// Fixed caliper.
        CaliperFixed,
        /// Electric parking brake: service mode before the caliper moves, battery supported, ignition left alone.
        EpbCaution,
        /// Electric car: ready is silent. Key far away, auto-hold off. Orange cables are high voltage.
        ElectricCaution,
        /// Electric car: jack only at the maker's pads, never on the battery case.
        ElectricJack,
        /// Air suspension: set it to jacking as the maker says, or it levels itself.
        AirCaution,
        // Questions and swings.
        /// Not touched means not done.
        Untouched,
        /// Five questions first.
        FiveQuestions,
        /// Not clear yet. A few more.
        MoreQuestions,
        /// Nothing to touch while it counts.
        CountSay,
        /// Swings.
        CountSwings,
        /// What did your hands feel?
        FeltAsk,
        /// Push in hard. Swing five times over a quarter turn. Keep pushing.
        PushSay,
        /// Pull out hard. Swing five times over a quarter turn. Keep pulling.
        PullSay,
        /// Push, swing.
        PushWord,
        /// Pull, swing.
        PullWord,
        /// Keep pushing: READ.
        ReadPushWord,
        /// Keep pulling: READ.
        ReadPullWord,
        /// Read.
        ReadNow,
        /// Same spot on both hubs.
        HeatPoint,
        /// Odometer.
        Odometer,
        /// Hub temperature.
        HubHeat,
        // Dial and rounds.
        /// Dial.
        DialReading,
        /// Still pushing: turn the bezel to zero.
        BezelToZero,
        /// Pushed in.
        FirstReading,
        /// Pulled out.
        SecondReading,
        /// Play.
        PlayLabel,
        /// divisions.
        Divisions,
        /// The needle passed zero. The shorter way round is taken.
        WrapSay,
        /// The needle may have gone another way round: how far did it go?
        AskTurns,
        /// That is not on this dial. Look again.
        TooFar,
        /// Of this set must be known.
        TakenWith,
        /// The rounds lie too far apart. Set the dial up again.
        RoundsApart,
        /// Rising: rollers not seated yet, or the base creeps.
        RoundsRise,
        /// Falling: the rollers are just seating. Swing more.
        RoundsFall,
        /// Up and down: tip, base or pull differs.
        RoundsScatter,
        /// The base gives more than a division. Set it elsewhere on the knuckle.
        BaseGives,
        /// Uncertainty.
        UncertaintyLabel,
        /// Median of the rounds.
        MedianLabel,
        /// Before.
        BeforeLabel,
        /// After.
        AfterLabel,
        /// Limit.
        LimitLabel,
        /// The axle nut had been loosened: the reading is marked.
        ReadingMarked,
        /// No reading was taken.
        NoReading,
        /// Too near the limit to call. Base off, set it elsewhere, take three more rounds.
        SecondSetSay,
        // Decision and the owner.
        /// It rests on.
        RestsOn,
        /// Not done.
        WasNotDone,
        /// No maker limit found.
        NoMakerLimit,
        /// House limit (common practice, no source).
        HouseLimit,
        /// Within, but not proven.
        WithinNotProven,
        /// For the owner.
        OwnerPage,
        /// May we do this repair?
        OwnerAsk,
        /// May we open and inspect it?
        OwnerAskInspect,
        /// Amount.
        Amount,
        /// What the customer pays if the repair is declined.
        IncludesRefit,
        /// How was the answer given?
        ConsentHow,
        /// Name of the one who answered.
        ConsentName,
        /// Phone or address it came from.
        ConsentAddress,
        /// Sign in the box with a finger.
        SignBox,
        /// Would not sign.
        SignRefused,
        /// The page is locked while the owner reads.
        PageLocked,
        // Turning fasteners.
        /// Snug pass.
        SnugPass,
        /// Final pass.
        FinalPass,
        /// Check pass: once round, no more.
        CheckPass,
        /// Star order.
        StarOrder,
        /// Crosswise.
        CrossOrder,
        /// Set the wrench to.
        SetTo,
        /// On the card.
        OnTheCard,
        /// No wrench on board fits this torque.
        NoWrenchFits,
        /// Use a new nut.
        UseNewNut,
        /// Use new bolts.
        UseNewBolts,
        /// No impact tool on the final torque.
        NoImpact,
        /// Which wrench?
        WhichWrench,
        /// The calibration of this wrench is overdue.
        CalibrationOver,
        // Proving and handing over.
        /// Not over the limit, smooth and quiet.
        ProofPassed,
        /// Smooth and quiet, and not measured.
        ProofUnmeasured,
        /// The end of a repair of which not everything was proved.
        FinishedNotProved,
        /// Nothing was opened.
        NothingOpened,
        /// Within the limit but not proven. It is printed, it does not block.
        ProofWithinNotProven,
        /// The new part does not pass. The vehicle stays at STOP.
        ProofFailed,
        /// Check axle nut torque, hub bolts, seat, then the part itself.
        ProofRecheck,
        /// A sign is still there. Another corner or another part?
        SignStillThere,
        /// By date.
        RetorqueDate,
        /// By distance.
        RetorqueDistance,
        /// Earliest of the published figures, unless the card or the shop says otherwise.
        RetorqueDefault,
        /// A month, common practice.
        RecheckDefault,
        /// Part number.
        PartNumber,
        /// Lot or date code.
        PartLot,
        /// How does the job end?
        ChooseEnding,
        /// The job has ended.
        EndedNow,
        /// The report is ready.
        ReportReady,
        /// Re-torque due.
        ReminderRetorque,
        /// Check again due.
        ReminderRecheck,
        // Names a screen reader speaks.
        /// Dial gauge.
        AriaDial,
        /// Wheel nuts in star order.
        AriaStar,
        /// Corners of the vehicle, seen from above.
        AriaCorner,
        /// Where you are.
        AriaStrip,
        /// Keys of this step.
        AriaKeys,
        /// Signature.
        AriaSignature,
        /// Storage.
        AriaStorage,
        /// Problem.
        AriaProblem,
        /// Before and after against the limit.
        AriaBar,
        /// Picture of this step.
        AriaPicture,
        /// The screen stays on.
        ScreenStaysOn,
        /// The screen may go off: this phone does not allow more.
        ScreenMayGoOff,
    }
}
