using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Letters;

/// <summary>One thing that a student may complain of, and where a log tells of it.</summary>
/// <param name="Test">The test that shows it; null where none does by itself.</param>
/// <param name="Way">On which side of the test’s good word it lies: 1 above, −1 below, 0 on either.</param>
/// <param name="Findings">The kinds of finding that are this very thing.</param>
internal sealed record Complaint(TestKind? Test, int Way, IReadOnlyList<string> Findings)
{
    /// <summary>Tests that bear on it too, the nearest first: they answer where its own wasn’t made. A crow answers by its pitch.</summary>
    public IReadOnlyList<TestKind> Near { get; init; } = [];

    /// <summary>Faults that are known to bring it about: they answer where no test does.</summary>
    public IReadOnlyList<string> Causes { get; init; } = [];

    /// <summary>What it is about, inside a sentence: “soft starts”.</summary>
    public string Name { get; init; } = "";

    /// <summary>What it is called beside its opposite: “what is sharp”, where something else is flat.</summary>
    public string Contrary { get; init; } = "";

    /// <summary>Whether its opposite was told before it: a test that lies on that side doesn’t answer it.</summary>
    public bool IsContrary { get; init; }

    /// <summary>Whether its opposite was told behind it, so that a test may bear out the one and not the other.</summary>
    public bool IsOpposed { get; init; }

    /// <summary>Whether that name is of several things: “how they are”.</summary>
    public bool IsPlural { get; init; }

    /// <summary>Whether it is a complaint only where nothing else is: “it was lovely in autumn”, but not “it was lovely, and now it is flat”.</summary>
    public bool IsOnlyAlone { get; init; }

    /// <summary>The words by which it was told; empty for a mark.</summary>
    public string Told { get; init; } = "";

    /// <summary>What was marked on a scale of the intake, with the scale’s own name; null for what was said in words.</summary>
    public (string Scale, string Mark)? Marked { get; init; }

    /// <summary>What was written, where nobody here can say what it is about.</summary>
    public static Complaint AsWritten { get; } = new(null, 0, []) { Name = "what you wrote of it" };

    /// <summary>What a student complains of, in the order in which it is written.</summary>
    /// <param name="words">The student’s words.</param>
    public static IReadOnlyList<Complaint> In(string words)
    {
        List<Complaint> all =
        [
            .. ComplaintsKnown.All.Select(one => (one.Means, At: ComplaintsKnown.Where(one.Words, words), one.Words)).Where(pair => pair.At is not null)
                .OrderBy(pair => pair.At).Select(pair => pair.Means with { Told = pair.Words.Match(words, pair.At!.Value).Value }),
        ];
        return EachOnce(all.TrueForAll(one => one.IsOnlyAlone) ? all : all.FindAll(one => !one.IsOnlyAlone));
    }

    // One for each test, and its opposite beside it.
    private static List<Complaint> EachOnce(IEnumerable<Complaint> all)
    {
        List<Complaint> kept = [];
        foreach (var one in all)
        {
            var same = kept.FindAll(other => other.Key == one.Key);
            if (same.Count == 0)
            {
                kept.Add(one);
            }
            else if (one.Test is not null && same.Exists(other => other.Way * one.Way < 0) && !same.Exists(other => other.Way == one.Way))
            {
                kept.Add(one.IsContrary ? one : one with { Name = one.Contrary, IsContrary = true, IsPlural = false });
            }
        }

        return kept;
    }

    /// <summary>What a student complains of on a reed, in words and on the scales; “the same” says once more what was said of another reed.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="batch">Its batch.</param>
    public static IReadOnlyList<Complaint> Of(Reed reed, Batch batch)
    {
        var said = Said(reed, batch);
        return [.. said, .. ComplaintsMarked.On(reed.Scales).Where(mark => !said.Any(one => one.Test == mark.Test || IsTheSameStart(one, mark))).DistinctBy(mark => (mark.Test, mark.Way))];
    }

    // “It doesn’t start softly” is how it starts as well: the mark says no more.
    private static bool IsTheSameStart(Complaint said, Complaint mark) => said.Test == TestKind.SoftestStart && mark.Test == TestKind.TonguedStarts;

    /// <summary>Whether something was written that nobody here can put to a test or a finding.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="batch">Its batch.</param>
    public static bool IsUnknown(Reed reed, Batch batch) => Said(reed, batch).Count == 0
        && !ComplaintsKnown.IsNone(reed.Bothers) && !(SameAs.Reed(reed, batch) is { } other && IsNothing(other, batch))
        && !batch.Questions.Any(question => question.Reed == reed.Id && question.Text.Trim() == reed.Bothers.Trim());

    // “The same” as “nothing”, be it of a reed of which “the same” was said.
    private static bool IsNothing(Reed reed, Batch batch) => ComplaintsKnown.IsNone(reed.Bothers) || (SameAs.Reed(reed, batch) is { } other && other.Number < reed.Number && IsNothing(other, batch));

    private static List<Complaint> Said(Reed reed, Batch batch) =>
        EachOnce((SameAs.Reed(reed, batch) is { } other ? other.Number < reed.Number ? Said(other, batch) : In(other.Bothers) : []).Concat(In(reed.Bothers)));

    /// <summary>Whether a test’s word bears it out.</summary>
    /// <param name="step">The index of the word.</param>
    public bool IsMet(int step) => Test is { } test && TestScale.Of(test) is var scale && scale.FromGood(step) > 0
        && (scale.Shape != ScaleShape.TwoSided || Way == 0 || Math.Sign(step - scale.Good) == Way);

    private (TestKind?, string) Key => (Test, Test is null ? Name : "");
}
