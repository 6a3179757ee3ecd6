namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Steps that follow from how the words stand to one another, where a list of ways would never end.</summary>
internal static class StepRules
{
    /// <summary>What is told besides how the faces were pressed.</summary>
    internal static int? Closing(Segment segment)
    {
        if (segment.Items.FirstOrDefault(item => item.Cat is Cat.Test && item.Count > 2) is { Value: nameof(TestKind.ClosingOrder) } pressed)
        {
            var rest = pressed.End < segment.End - 1 ? segment.Part(pressed.End, segment.End) : segment.Part(segment.First, pressed.First);
            return StepWays.Find(rest, TestKind.ClosingOrder) ?? ClosingOrder(rest);
        }

        return StepWays.Find(segment, TestKind.ClosingOrder) ?? ClosingOrder(segment);
    }

    /// <summary>“It’s the middle that kisses first”, “closes from the sides in”.</summary>
    private static int? ClosingOrder(Segment segment)
    {
        if (!Enumerable.Range(segment.First, segment.End - segment.First).Any(at => segment.Word(at) is "close" or "closes" or "closed" or "closing" or "meet" or "meets" or "met" or "touch" or "touches" or "touched" or "touching" or "shut" or "shuts" or "kiss" or "kisses" or "contact" or "contacts" or "together" or "join" or "goes" or "go" or "comes" or "close" or "in"))
        {
            return null;
        }

        for (var i = segment.First; i < segment.End; i++)
        {
            var first = segment.Word(i) is "first" or "before" or "ahead" || (segment.Word(i) is "in" && From(segment, i)) || (segment.Word(i) is "out" && From(segment, i));
            if ((first || segment.Word(i) is "last" or "after") && Part(segment, i) is { } centre)
            {
                return first == centre ? 0 : 2;
            }
        }

        return null;
    }

    // “From the sides in”, “from the middle out”.
    private static bool From(Segment segment, int at) => Enumerable.Range(segment.First, at - segment.First).Any(before => segment.Word(before) is "from" && at - before <= 3);

    // The part named last before the word, else the first after it; true for the centre.
    private static bool? Part(Segment segment, int at)
    {
        for (var i = at - 1; i >= segment.First; i--)
        {
            if (IsCentre(segment.Word(i)) is { } centre)
            {
                return centre;
            }
        }

        for (var i = at + 1; i < segment.End; i++)
        {
            if (IsCentre(segment.Word(i)) is { } centre)
            {
                return centre;
            }
        }

        return null;
    }

    private static bool? IsCentre(string word) => word switch
    {
        "middle" or "centre" or "middles" => true,
        "sides" or "side" or "edges" or "corners" or "outside" or "outsides" or "wings" or "ears" or "edge" => false,
        _ => null,
    };

    /// <summary>“Needs the lip to hold it up”, “only stays if I nurse it”.</summary>
    internal static int? Helped(Segment segment) => Enumerable.Range(segment.First, segment.End - segment.First).Any(at => segment.Word(at) is "help" or "helped" or "helping" or "lip" or "lipping" or "lipped" or "support" or "supported" or "supporting" or "nurse" or "nursing" or "nursed" or "coax" or "coaxing" or "coaxed" or "prop" or "propping" or "babying" or "persuading" or "babysitting"
            && !(segment.Word(at - 1) is "no" or "any" or "without" || segment.Word(at - 2) is "no" or "without" or "any")) ? 2 : null;

    /// <summary>“Can’t get it going quietly”.</summary>
    internal static int? Soft(Segment segment) => (segment.Items.Any(item => item.Cat is Cat.Not) || segment.HasWord("refuses") || segment.HasWord("refuse") || segment.HasWord("refused") || segment.HasWord("fails") || segment.HasWord("declines") || segment.HasWord("hates"))
        && Enumerable.Range(segment.First, segment.End - segment.First).Any(at => segment.Word(at) is "softly" or "quietly" or "soft" or "quiet" or "pianissimo" or "pp" or "whisper" or "gently")
        && Enumerable.Range(segment.First, segment.End - segment.First).Any(at => segment.Word(at) is "start" or "starts" or "going" or "speak" or "begin" or "get" or "come" or "sound" or "play" or "go" or "enter")
        && !segment.HasWord("push") && !segment.HasWord("trouble") && !segment.HasWord("problem") && !segment.HasWord("without") ? 0 : null;
}
