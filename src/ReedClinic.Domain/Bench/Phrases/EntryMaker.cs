using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Makes the domain's entries of what was read.</summary>
internal static class EntryMaker
{
    internal static Outcome<BenchEntry> Make(ReadEntry read, PhraseContext context) => read.Kind switch
    {
        EntryKind.Test => Any(Test(read, context)),
        EntryKind.Finding => Any(Finding(read)),
        EntryKind.LookedFor => Any(LookedFor.Of(new FindingKindId(read.Slots.Kind!), read.Slots.Known ?? KnownBy.NotSaid, Plain(read.HasAside ? read.Said : null))),
        EntryKind.FindingEnded => Ended(read, context),
        EntryKind.LeaveAlone => Any(LeaveAlone.Of(PlaceOf(read.Slots), Plain(read.Said))),
        EntryKind.Adjustment => Any(Adjustment(read)),
        EntryKind.Risk => Any(Risk.Of(Plain(read.Said), read.Slots.Zone)),
        EntryKind.RiskClosed => Closed(read, context),
        EntryKind.Stopped => Any(Stopped.Of(Plain(LeftWords.Beyond(read.Said, Cat.Stop)))),
        EntryKind.Verdict => Any(Verdict.Of(read.Slots.Verdict!.Value, Plain(read.HasAside ? read.Said : LeftWords.Beyond(read.Said, Cat.Verdict)))),
        _ => Note(read),
    };

    private static Outcome<BenchEntry> Note(ReadEntry read) => Any(Bench.Note.Of(Plain(read.Said)));

    private static Outcome<Test> Test(ReadEntry read, PhraseContext context)
    {
        var slots = read.Slots;
        var test = slots.Test!.Value;
        if (slots.Length is { } length)
        {
            return Bench.Test.Of(test, words: read.HasAside ? Plain(read.Said) : null, millimetres: Math.Round(length, 1));
        }

        var scale = TestScale.Of(test);
        int? step = slots.Step is { } word ? scale.Steps.ToList().IndexOf(word) : null;
        var pitch = scale.TakesPitch ? PitchMaker.Make(read, test, context) : null;
        var complete = (step is not null || pitch is not null) && !read.HasAside && !(slots.Pitch is not null && pitch is null);
        return Bench.Test.Of(test, step, pitch, complete ? null : Plain(read.Said));
    }

    private static Outcome<Finding> Finding(ReadEntry read)
    {
        var slots = read.Slots;
        var kind = new FindingKindId(slots.Kind!);
        var place = PlaceOf(slots);
        var known = FindingCatalogue.Find(kind);
        var other = OtherOf(slots, place);
        var shape = slots.Relation is not null && other is not null ? FindingShape.Comparison
            : known?.Shape is { } usual and not FindingShape.Comparison ? usual : FindingShape.Spot;
        var words = slots.Degree is not null || read.HasAside || known is null || (slots.Relation is not null && other is null) ? read.Said : null;
        return Bench.Finding.Of(
            kind,
            slots.Character ?? known?.Usually ?? FindingCharacter.Fault,
            place,
            shape,
            shape is FindingShape.Comparison ? slots.Relation : null,
            shape is FindingShape.Comparison ? other : null,
            slots.Known ?? KnownBy.NotSaid,
            slots.Certainty ?? Certainty.Certain,
            slots.Arose ?? Arose.AsItArrived,
            Plain(words));
    }

    /// <summary>The other place of a comparison: what wasn't said of it is as in the first.</summary>
    private static Place? OtherOf(ReadSlots slots, Place place)
    {
        if (slots.Relation is null)
        {
            return null;
        }

        var other = new Place(
            slots.OtherZone ?? place.Zone,
            slots.OtherBlades ?? (slots.OtherZone is null && slots.OtherSides is null && place.Blades is Blades.Both ? Blades.Both : place.Blades),
            slots.OtherSides ?? (slots.OtherBlades is not null || slots.OtherZone is not null ? place.Sides : Sides.Both));
        return other == place ? null : other;
    }

    private static Outcome<Adjustment> Adjustment(ReadEntry read)
    {
        var slots = read.Slots;
        var kind = new AdjustmentKindId(slots.Kind!);
        var words = read.HasAside || kind == AdjustmentKindId.SomethingElse ? read.Said : null;
        return Bench.Adjustment.Of(kind, PlaceOf(slots), new Amount(slots.Strokes, slots.Mm, slots.Words), forTheSakeOf: slots.Sake, words: Plain(words));
    }

    private static Outcome<BenchEntry> Ended(ReadEntry read, PhraseContext context)
    {
        var slots = read.Slots;
        return new Before(context.Log).FindingOf(slots.Kind, slots.Zone) is { } finding && slots.Ending is { } ending
            ? Any(FindingEnded.Of(finding.Root, ending, Plain(read.Said)))
            : Note(read);
    }

    private static Outcome<BenchEntry> Closed(ReadEntry read, PhraseContext context)
    {
        var risk = context.Log.OpenRisks.LastOrDefault() ?? (context.Log.Risks.Count > 0 ? context.Log.Risks[^1] : null);
        return risk is not null && read.Slots.Outcome is { } outcome
            ? Any(RiskClosed.Of(risk.Fact.Root, outcome, Plain(read.Said)))
            : Note(read);
    }

    private static Place PlaceOf(ReadSlots slots) => new(slots.Zone ?? Zone.WholeReed, slots.Blades ?? Blades.Both, slots.Sides ?? Sides.Both);

    /// <summary>Words as the log takes them: without what can't be shown.</summary>
    private static string? Plain(string? words)
    {
        if (PlainText.Tidy(words) is not { } said)
        {
            return null;
        }

        var shown = string.Concat(said.EnumerateRunes().Where(rune => rune.Value != 0xFFFD && (rune.Value is '\n' or '\r' or '\t' || !System.Text.Rune.IsControl(rune))));
        return PlainText.Tidy(shown);
    }

    private static Outcome<BenchEntry> Any<T>(Outcome<T> outcome)
        where T : BenchEntry => outcome switch
        {
            Outcome<T>.Done done => new Outcome<BenchEntry>.Done(done.Value),
            Outcome<T>.Refused refused => new Outcome<BenchEntry>.Refused(refused.Problems),
            _ => new Outcome<BenchEntry>.NotFound(),
        };
}
