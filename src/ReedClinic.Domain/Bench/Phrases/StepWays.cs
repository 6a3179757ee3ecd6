using ReedClinic.Domain.Bench.Phrases.Words;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>The ways in which the steps of a test’s scale are told.</summary>
internal static class StepWays
{
    /// <summary>Ways that say how often and not how: they count only when nothing else does.</summary>
    private static readonly HashSet<string> Vague = ["every time", "first time", "each time", "most of the time", "all the way", "for the most part", "mostly", "well", "good", "fine", "nicely", "great", "speak", "come", "there", "straight away", "play"];

    private static readonly HashSet<string> Small = ["straight", "right", "so", "too", "always", "simply", "rather", "pretty", "still", "even", "ever", "that", "them", "my", "their", "its", "on", "clean", "absolutely", "totally", "completely", "immediately", "gently", "nicely", "usually", "occasionally", "again", "the", "a", "an", "of", "very", "really", "quite", "all", "just", "it", "now", "they", "then", "and", "only", "right", "''", "", "some", "to", "is", "'s", "are"];

    private static readonly Dictionary<TestKind, List<Way>> Ways = Read();

    private static readonly Dictionary<TestKind, HashSet<string>> Words = Ways.ToDictionary(pair => pair.Key, pair => pair.Value.SelectMany(way => way.Words).ToHashSet());

    /// <summary>True for a word that some step of the test is told with.</summary>
    internal static bool Knows(TestKind test, string word) => Words.TryGetValue(test, out var words) && words.Contains(StepVerbs.Base(word));

    /// <summary>The step that the segment tells. What is wrong counts before what is well: “comes out late” is late.</summary>
    internal static int? Find(Segment segment, TestKind test)
    {
        if (!Ways.TryGetValue(test, out var ways))
        {
            return null;
        }

        var good = TestScale.Of(test).Good;
        Way? best = null;
        foreach (var way in ways)
        {
            var at = At(segment, way.Words);
            if (at < 0 || (segment.Word(at - 1) is "no" && !way.Words.Any(IsDenial)) || (way.Step != good && !way.Words.Any(IsDenial) && (IsDenial(segment.Word(at - 1)) || (segment.Word(at - 1) is "a" or "any" or "so" or "too" or "at" && IsDenial(segment.Word(at - 2)))) && !segment.HasWord("longer")))
            {
                continue;
            }

            if (best is not { } first)
            {
                best = way;
                continue;
            }

            if (first.Step == good && way.Step != good && !way.IsVague && !first.Words.Contains("not") && !way.Words.All(first.Words.Contains) && !first.Words.Any(word => word is "without" or "no" or "never"))
            {
                best = way;
                break;
            }
        }

        return best is { } found ? Told(segment, test, found, good) : null;
    }

    private static int? Told(Segment segment, TestKind test, Way way, int good)
    {
        if (!Denies(segment, way.Words))
        {
            return way.Step;
        }

        if (way.Step != good)
        {
            return way.Step is 0 or 1 && TestScale.Of(test).Shape is ScaleShape.OneSided && test is not TestKind.ClosingOrder && segment.Items.Any(item => item.Cat is Cat.NoMore) | segment.HasWord("longer") ? good : way.Step;
        }

        return test is TestKind.LowResponse or TestKind.HighSteadiness or TestKind.SoftestStart or TestKind.Seal
            && way.Words[^1] is "speak" or "come" or "start" or "hold" or "stay" or "there" or "out" or "play" or "breath" or "softly" or "respond" or "sound" or "seal" or "pop" ? 0 : null;
    }

    private static bool IsDenial(string word) => word is "not" or "no" or "never" or "without" or "nor" or "hardly";

    private static bool Denies(Segment segment, string[] way) => !way.Contains("not") && !way.Contains("no") && !way.Contains("without")
        && segment.All(Cat.Not).Any(not => segment.Word(not.First) is "not" or "never" or "hardly" or "no" && (segment.Word(not.First) is not "no" || segment.Word(not.First + 1) is "longer") && not.First < At(segment, way));

    private static int At(Segment segment, string[] way)
    {
        for (var start = segment.First; start < segment.End; start++)
        {
            if (Said(segment, start) != way[0])
            {
                continue;
            }

            var at = start + 1;
            var next = 1;
            while (next < way.Length && at < segment.End)
            {
                if (Said(segment, at) == way[next])
                {
                    next++;
                }
                else if (!Small.Contains(segment.Word(at)))
                {
                    break;
                }

                at++;
            }

            if (next == way.Length)
            {
                return start;
            }
        }

        return -1;
    }

    private static string Said(Segment segment, int at) => segment.Word(at) is "never" ? "not" : StepVerbs.Base(segment.Word(at));

    private static Dictionary<TestKind, List<Way>> Read() => TestWords.Steps
        .SelectMany(line => line.Ways.Split(',', StringSplitOptions.TrimEntries).Select(way => (line.Test, Way: Of(way, line.Step))))
        .GroupBy(line => line.Test)
        .ToDictionary(
            group => group.Key,
            group => group.OrderBy(line => line.Way.IsVague).ThenByDescending(line => line.Way.Words.Length).Select(line => line.Way).ToList());

    private static Way Of(string way, int step) => new([.. way.Split(' ').SelectMany(word => Contractions.Split(word)).Select(part => part.Word is "never" ? "not" : StepVerbs.Base(part.Word))], step, Vague.Contains(way));

    private readonly record struct Way(string[] Words, int Step, bool IsVague);
}
