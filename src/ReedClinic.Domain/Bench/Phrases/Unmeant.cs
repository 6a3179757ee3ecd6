namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>The guards behind the judge that ask whose a word is: which test’s, which finding’s, which place’s. What can’t be known is a remark, or shown in doubt.</summary>
internal static class Unmeant
{
    internal static void Keep(Course course)
    {
        NoCrow.Keep(course);
        PlayedNotes.Keep(course);
        Timbres.Keep(course);
        Comparers.Keep(course);
        Unfound.Keep(course);
        LeftAlone.Keep(course);
        RoundEyes.Keep(course);
        Octaves.Keep(course);
        Verdicts.Join(course);
        ThatPlace.Keep(course);
        Parted.Keep(course);
        Tints.Keep(course);
        Worse.Keep(course);
        Meant.Keep(course);
        OfWhat.Keep(course);
        HeardSteps.Keep(course);
        SaidOfDeeds.Keep(course);
        Humps.Keep(course);
        SaidOfFindings.Keep(course);
        SaidOfFaults.Keep(course);
        AskedAndAnswered.Keep(course);
        Supposed.Keep(course);
        TooMuch.Keep(course);
        StrokesOf.Keep(course);
        PlaceNextBreath.Keep(course);
        MorePlaces.Keep(course);
        PlaceSaidAfter.Keep(course);
        NeverTouch.Keep(course);
        EvenNow.Keep(course);
        OtherTrials.Keep(course);
        Silent.Keep(course);
        NothingDone.Keep(course);
        SoftStarts.Keep(course);
        TipSaid.Keep(course);
        Sideless.Keep(course);
        WireMoved.Keep(course);
        KeepGiven(course);
    }

    // What is no verdict, no result and no end; and what is a test, a stop or an end of its own.
    private static void KeepGiven(Course course)
    {
        Tidied.Keep(course);
        KnownBehind.Keep(course);
        OfThatWork.Keep(course);
        CleanedUp.Keep(course);
        LeftForToday.Keep(course);
        OfItself.Keep(course);
        Similes.Keep(course);
        EndedByName.Keep(course);
        NowGood.Keep(course);
        Sizes.Keep(course);
        WireWays.Keep(course);
        OpenVerdict.Keep(course);
        Ungiven.Keep(course);
        EndedOf.Keep(course);
        KeepTold(course);
    }

    // What the words say plainly, and was not taken.
    private static void KeepTold(Course course)
    {
        Denied.Keep(course);
        ButTheOther.Keep(course);
        DoneInstead.Keep(course);
        Sparing.Keep(course);
        HeardPlainly.Keep(course);
        ToldOfDeeds.Keep(course);
        LooksOnly.Keep(course);
        NoteAhead.Keep(course);
        FromItsNote.Keep(course);
        OnlySaidSo.Keep(course);
        HeardOtherwise.Keep(course);
        StrokesDown.Keep(course);
        ToldOfTests.Keep(course);
        ToldOfFaults.Keep(course);
        ToldOfWork.Keep(course);
        KeepPlain(course);
    }

    // What sounds like its opposite.
    private static void KeepPlain(Course course)
    {
        SqueezedWhere.Keep(course);
        ScarcelyAny.Keep(course);
        EvenedUp.Keep(course);
        CountsSaid.Keep(course);
        SlippedKnife.Keep(course);
        OfNotes.Keep(course);
        EvenWhere.Keep(course);
        NeverWorked.Keep(course);
        OfWhichPart.Keep(course);
        OfTheNote.Keep(course);
        HowItIs.Keep(course);
        OfWhichTest.Keep(course);
        Shortfalls.Keep(course);
        NotThisReed.Keep(course);
        Barely.Keep(course);
        DeniedValues.Keep(course);
        KeepSaid(course);
    }

    // What puts right or bounds what was said right before it, and which notes were fingered.
    private static void KeepSaid(Course course)
    {
        SaidInstead.Keep(course);
        NoMoreThanThat.Keep(course);
        FingeredNotes.Keep(course);
        DeniedBest.Keep(course);
        DeniedNoise.Keep(course);
        PlacesInARow.Keep(course);
        KeepToWhatIs(course);
    }

    // Whose hand was in it, and of which part or test it is.
    private static void KeepToWhatIs(Course course)
    {
        NoHandInIt.Keep(course);
        OfTheWire.Keep(course);
        OfAnotherPart.Keep(course);
        OfAnotherTest.Keep(course);
        CameTo.Keep(course);
        FineAsItIs.Keep(course);
        Overmuch.Keep(course);
        NoFaultNamed.Keep(course);
        EachItsOwn.Keep(course);
        NotByHand.Keep(course);
        NotThatEither.Keep(course);
        SaidOutright.Keep(course);
        KeepHeld(course);
    }

    // What is told of the same place, of the other one, or of before.
    private static void KeepHeld(Course course)
    {
        WireTurned.Keep(course);
        StateAndWork.Keep(course);
        OfBefore.Keep(course);
        OtherOne.Keep(course);
        ToldBeside.Keep(course);
    }
}
