using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Letters;

/// <summary>What a student marked on the scales of the intake, each mark beside the middle as a complaint of its own.</summary>
internal static class ComplaintsMarked
{
    /// <summary>The complaints, in the order of the scales.</summary>
    /// <param name="scales">What was marked.</param>
    public static IEnumerable<Complaint> On(ReedScales scales)
    {
        foreach (var words in AspectWords.All)
        {
            if (scales[words.Aspect] is { Value: not 0 } mark)
            {
                yield return Of(words.Aspect, Math.Sign(mark.Value)) with { Marked = (words.Name, words.Say(mark)) };
            }
        }
    }

    /// <summary>Whether a student marked what a kind of finding is.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="kind">The kind.</param>
    public static bool Holds(Reed reed, FindingKindId kind) => On(reed.Scales).Any(complaint => complaint.Findings.Contains(kind.Value));

    // Which way a mark lies on the test that answers it. Common practice.
    internal static Complaint Of(Aspect aspect, int way) => aspect switch
    {
        Aspect.Response when way > 0 => new(TestKind.TonguedStarts, 0, []) { Name = "the beginnings of notes", IsPlural = true, Near = [TestKind.SoftestStart, TestKind.Peep] },
        Aspect.Response => new(TestKind.Effort, -1, []) { Name = "how easily it starts" },
        Aspect.Intonation => new(TestKind.TuningNote, way, []) { Name = "its pitch", Near = [TestKind.Crow] },
        Aspect.Opening => new(TestKind.Opening, way, way > 0 ? ["opening-wide", "more-open-than-liked"] : ["opening-narrow", "closes-in-play"]) { Name = "the opening" },
        Aspect.Effort => new(TestKind.Effort, way, []) { Name = "how hard it is to blow" },
        Aspect.Sound => new(TestKind.Edge, -way, way < 0 ? ["brighter-than-liked"] : []) { Name = "the sound", Near = [TestKind.Depth] },
        Aspect.SoftPlaying => new(TestKind.SoftestStart, 0, []) { Name = "soft playing", Near = [way < 0 ? TestKind.Swell : TestKind.TonguedStarts] },
        Aspect.HighNotes => new(TestKind.HighSteadiness, 0, []) { Name = "the high notes", IsPlural = true },
        _ => new(TestKind.Effort, way, []) { Name = "how tiring it is", Near = [TestKind.Opening] },
    };
}
