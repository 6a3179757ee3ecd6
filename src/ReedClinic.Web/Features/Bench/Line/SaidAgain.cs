using System.Globalization;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Features.Bench.Forms;

namespace ReedClinic.Web.Features.Bench.Line;

/// <summary>
/// What stands in the log in words for the line: those in which it was said, where they were kept, else such as the line hears the same in.
/// What the line has no words for keeps what it was when something is said better.
/// </summary>
public static class SaidAgain
{
    // Work whose name in the list nobody says so.
    private static readonly Dictionary<string, string[]> AsItIsSaid = new()
    {
        ["soak"] = ["soaked it"],
        ["define-tip"] = ["defined the tip", "defined the rooftop", "defined the line between tip and heart", "sharpened the line between tip and heart", "made the step at the rooftop clearer"],
    };

    /// <summary>The words.</summary>
    /// <param name="entry">What stands.</param>
    /// <param name="view">The reed and its log.</param>
    /// <returns>Null where no words of ours would be heard as the same; then it is said better in its fields.</returns>
    public static string? Of(BenchEntry entry, BenchView view)
    {
        ArgumentNullException.ThrowIfNull(entry);
        ArgumentNullException.ThrowIfNull(view);
        return entry switch
        {
            Note note => note.Words,
            Stopped stop => stop.Words ?? "",
            AdviceSetAside aside => aside.Words ?? "",
            Verdict or CauseJudged or Undo or Parked => null,
            Test { MeasuredFrom: not null } => null,
            _ => Ways(entry).Prepend(entry.Said ?? "").Where(words => words.Length > 0).Distinct().FirstOrDefault(words => IsHeardAs(entry, words, view)),
        };
    }

    /// <summary>What a line says in an entry’s place: whatever it has no words for stays as it was.</summary>
    /// <param name="before">What stands.</param>
    /// <param name="after">What the line said.</param>
    public static BenchEntry With(BenchEntry before, BenchEntry after)
    {
        ArgumentNullException.ThrowIfNull(after);
        return Joined(before, after).AsSaid(after.Said);
    }

    private static BenchEntry Joined(BenchEntry before, BenchEntry after) => (before, after) switch
    {
        (Adjustment was, Adjustment work) => Made(Adjustment.Of(
            work.AdjustmentKind, work.Place, work.Amount, work.ForFindingId ?? was.ForFindingId, work.ForTheSakeOf,
            IsAnswered(was, work) ? Agreement.With(OwnId.Remark(work.AdjustmentKind.Value, work.Words), Agreement.IsIn(was.Words)) : work.Words)),
        (Finding { KnownBy: not KnownBy.NotSaid } was, Finding { KnownBy: KnownBy.NotSaid } now) when was.FindingKind == now.FindingKind =>
            Made(Finding.Of(now.FindingKind, now.Character, now.Place, now.Shape, now.Relation, now.OtherPlace, was.KnownBy, now.Certainty, now.Arose, now.Words)),
        _ => after,
    };

    // What was said of its being agreed is said of this work and so much of it; anything else is asked about again.
    private static bool IsAnswered(Adjustment was, Adjustment work) =>
        Agreement.IsSaid(was.Words) && was.AdjustmentKind == work.AdjustmentKind && was.AmountMicrometres == work.AmountMicrometres && was.AmountStrokes == work.AmountStrokes;

    private static bool IsHeardAs(BenchEntry entry, string words, BenchView view)
    {
        var heard = HeardLine.Of(words, view.Log, view.Batch.CrowTarget.Tuning, view.Catalogue.Own);
        return heard is { Kept: null, Entries: [var one] } && one.Entry.Kind == entry.Kind
            && view.Catalogue.Own.Named(With(entry, one.Entry), view.Log) is Outcome<BenchEntry>.Done(var said) && IsSame(entry, said);
    }

    private static bool IsSame(BenchEntry one, BenchEntry other)
    {
        var (before, after) = (EntryForm.FieldsOf(one), EntryForm.FieldsOf(other));
        return before.Keys.Union(after.Keys).All(name =>
            (name == nameof(Amount) && one is Adjustment work && other is Adjustment again && work.AmountBeside() == again.AmountBeside())
            || (name == nameof(Test.Pitch) && one is Test { Pitch: { } said } && other is Test { Pitch: { } heard } && IsSame(said, heard))
            || (before.GetValueOrDefault(name) ?? "") == (after.GetValueOrDefault(name) ?? ""));
    }

    private static bool IsSame(SaidPitch one, SaidPitch other) =>
        (one.PitchClass, one.Cents, one.Octave, one.Between, one.Lean) == (other.PitchClass, other.Cents, other.Octave, other.Between, other.Lean);

    private static IEnumerable<string> Ways(BenchEntry entry) => entry switch
    {
        Test test => OfTest(test),
        Finding finding => OfFinding(finding),
        LookedFor looked => [looked.Words ?? "", $"no {FindingCatalogue.NameOf(looked.FindingKind)}", $"{FindingCatalogue.NameOf(looked.FindingKind)}: not there"],
        FindingEnded ended => [ended.Words ?? ""],
        LeaveAlone left => [left.Words, $"leave the {left.Place.Say()} alone"],
        Adjustment work => OfWork(work),
        Risk risk => [risk.Words],
        RiskClosed closed => [closed.Words ?? ""],
        _ => [],
    };

    private static IEnumerable<string> OfTest(Test test)
    {
        var name = TestScale.Of(test.TestKind).Name;
        var pitch = test.Pitch is { } said ? Told(said) : null;
        string?[] parts = [test.MeasuredWords, test.StepWord, pitch];
        var told = string.Join(", ", parts.Where(part => part is not null));
        yield return test.Words ?? $"{name} {told}";
        yield return $"{name}: {told}";
        yield return $"{name} {test.StepWord}";
        yield return $"{test.StepWord}";
        yield return $"{name} is {told}";
        yield return $"{name} {pitch}, {test.StepWord}";
        yield return $"{name} {pitch} {test.StepWord?.Replace(", ", " ", StringComparison.Ordinal)}";
    }

    private static string Told(SaidPitch pitch)
    {
        var note = pitch.PitchClass.Name.Replace("♭", " flat", StringComparison.Ordinal).Replace("♯", " sharp", StringComparison.Ordinal) + pitch.Octave?.ToString(CultureInfo.InvariantCulture);
        return pitch.Between is not null ? pitch.Text
            : pitch.Lean is PitchLean.Flat ? $"{note}, a little flat"
            : pitch.Lean is PitchLean.Sharp ? $"{note}, a little sharp"
            : pitch.Cents.Value == 0 ? note : note + pitch.Cents.Value.ToString(" +0.##; -0.##", CultureInfo.InvariantCulture);
    }

    private static IEnumerable<string> OfFinding(Finding finding)
    {
        var name = FindingCatalogue.NameOf(finding.FindingKind);
        yield return OwnId.Remark(finding.FindingKind.Value, finding.Words) ?? name;
        yield return name;
        foreach (var place in Places(finding.Place))
        {
            yield return $"{name}, {place}";
            yield return $"{place}: {name}";
            yield return finding.Relation is { } relation && finding.OtherPlace is { } other ? $"{place} {relation.Name()} {Places(other).First()}" : $"{name} on the {place}";
        }
    }

    private static IEnumerable<string> OfWork(Adjustment work)
    {
        var kind = AdjustmentCatalogue.Find(work.AdjustmentKind);
        if (Agreement.Without(OwnId.Remark(work.AdjustmentKind.Value, work.Words)) is { Length: > 0 } kept)
        {
            yield return kept;
        }

        var done = kind?.Done ?? OwnId.Called(work.Words);
        var amount = work.AmountBeside();
        foreach (var said in AsItIsSaid.GetValueOrDefault(work.AdjustmentKind.Value) ?? [])
        {
            yield return Joined(said, amount);
        }

        var usual = kind is not null && work.Place == new Place(kind.Zone);
        foreach (var place in usual ? [""] : Places(work.Place).Append(work.Place.Say()).Select(place => $"{place}"))
        {
            foreach (var verb in new[] { done, kind?.Name ?? done })
            {
                yield return Joined(verb, place, amount);
                yield return Joined($"{verb} on the {place}", "", amount);
                yield return Joined($"{verb} {place}", "", amount);
                yield return Joined(verb, amount, place);
                yield return Joined($"{verb} {amount}", place);
            }
        }
    }

    private static string Joined(params IEnumerable<string> parts) => string.Join(", ", parts.Where(part => part.Length > 0));

    // “Upper blade left”, “left tip corner”: as it is said at the bench.
    private static IEnumerable<string> Places(Place place)
    {
        var blade = place.Blades switch { Blades.Upper => "upper blade", Blades.Lower => "lower blade", _ => "" };
        var side = place.Sides switch { Sides.Left => "left", Sides.Right => "right", _ => "" };
        yield return $"{side} {place.Zone.Name()} {blade}".Trim();
        yield return $"{blade} {side} {place.Zone.Name()}".Trim();
        yield return $"{blade} {side}".Trim();
    }

    private static T Made<T>(Outcome<T> made) =>
        made is Outcome<T>.Done(var value) ? value : throw new InvalidOperationException("What stands already can be said again.");
}
