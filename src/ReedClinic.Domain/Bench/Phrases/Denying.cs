namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Which word a denial stands before: praise, or something bad.</summary>
internal static class Denying
{
    private static readonly HashSet<string> Best = [.. "intact whole kept even evenly smooth smoothly matched match matches matching alike level equal equally balanced symmetrical seal seals sealed sealing airtight tight straight square true neat set separate separated distinct defined clear clearly clean cleanly fall falls falling taper tapers preserved unbroken blended gradual oval right fine good great perfect ok okay hold holds holding speak speaks speaking respond responds start starts starting come comes coming tune keep keeps stay stays steady secure securely full rich prompt promptly immediate instant reliable reliably stable pure join joins close closes there deep solid sound quick easy".Split(' ')];

    // What may stand between a denial and what it denies.
    private static readonly HashSet<string> Between = [.. "at all quite very really so entirely completely totally perfectly longer near from but be been any more always the a an to as exactly especially fully wholly properly remotely close well in even that too_well think believe say call it is 's are they this what you i would anymore nice nicely tied".Split(' ')];

    private static readonly HashSet<string> Broken = [.. "broken broke cut gone missing damaged ruined torn breached nicked lost rough split chipped uneven crooked lopsided patchy lumpy bumpy ragged holed hole gap gaps interrupted destroyed spoiled spoilt leaks leaking".Split(' ')];

    private static readonly HashSet<string> Whole = ["whole", "intact", "unbroken", "preserved"];

    private static readonly HashSet<string> Parting = ["but", "still", "though", "although", "yet", "however", "and", "nonetheless"];

    /// <summary>Whether what is praised in it is denied.</summary>
    internal static bool OfBest(Segment said)
    {
        var denied = -1;
        for (var at = said.First; at < said.End && !said.Asked; at++)
        {
            var (from, hit) = (After(said, at), -1);
            if (from >= 0 && !IsUnbeaten(said, at) && (hit = Next(said, from)) >= 0 && Best.Contains(said.Word(hit)))
            {
                denied = hit;
            }
        }

        return denied >= 0 && !IsPraisedAfter(said, denied) || IsDeniedBehind(said);
    }

    /// <summary>Whether it is said to be broken, gone or cut, and nothing in it is praised.</summary>
    internal static bool IsBroken(Segment said) => Enumerable.Range(said.First, said.End - said.First).Any(at => Broken.Contains(said.Word(at)) && !IsSpared(said, at) || said.Word(at) is "no" && said.Word(at + 1) is "longer" && said.Word(at + 2) is "there")
        && !Enumerable.Range(said.First, said.End - said.First).Any(at => said.Word(at) is not "there" && Best.Contains(said.Word(at)));

    /// <summary>“Thin but whole”: whole in spite of it.</summary>
    internal static bool IsWholeAfterAll(Segment said)
    {
        var at = Enumerable.Range(said.First, said.End - said.First).FirstOrDefault(word => Whole.Contains(said.Word(word)) && word > said.First, -1);
        return at > 0 && !said.Asked && Enumerable.Range(said.First, at - said.First).Any(word => said.Word(word) is "but" or "yet" or "though" or "still") && !OfBest(said) && !Enumerable.Range(said.First, said.End - said.First).Any(word => Broken.Contains(said.Word(word)) || said.Word(word) is "not" or "hardly" or "barely" or "almost" or "nearly");
    }

    // Where what is denied begins; less than nothing where this word denies nothing.
    private static int After(Segment said, int at) => said.Word(at) switch
    {
        "not" or "never" or "hardly" or "barely" or "scarcely" or "nowhere" or "neither" => said.Word(at + 1) is "only" or "just" or "merely" or "sure" ? -1 : at + 1,
        "no" when said.Word(at + 1) is "longer" or "way" => at + 2,
        "anything" when said.Word(at + 1) is "but" => at + 2,
        "far" when said.Word(at + 1) is "from" => at + 2,
        "less" when said.Word(at + 1) is "than" => at + 2,
        "stopped" when said.Word(at + 1).EndsWith("ing", StringComparison.Ordinal) => at + 1,
        _ => -1,
    };

    private static int Next(Segment said, int from)
    {
        var at = from;
        while (at < said.End && (Between.Contains(said.Word(at)) || said.Word(at) is "clearly") && !(said.Word(at) is "even" && (at + 1 >= said.End || said.Tokens[at + 1].Kind is TokenKind.Break || said.Word(at + 1) is "at" or "across" or "on" or "all" or "any" or "enough")))
        {
            at++;
        }

        return at < said.End && said.Tokens[at].Kind is TokenKind.Word ? at : -1;
    }

    // “Couldn’t be smoother”, “can’t be more even”.
    private static bool IsUnbeaten(Segment said, int at) => said.Word(at - 1) is "can" or "could" && said.Word(at + 1) is "be" or "get" or "have" or "ask";

    private static bool IsPraisedAfter(Segment said, int denied) => Enumerable.Range(denied + 1, Math.Max(0, said.End - denied - 1)).FirstOrDefault(at => Parting.Contains(said.Word(at)) || said.Tokens[at].Text is ",", -1) is >= 0 and var parting
        && Enumerable.Range(parting + 1, Math.Max(0, said.End - parting - 1)).Any(at => Best.Contains(said.Word(at)));

    // “Smooth it is not”.
    private static bool IsDeniedBehind(Segment said)
    {
        var last = said.End - 1;
        while (last > said.First && said.Tokens[last].Kind is TokenKind.Break)
        {
            last--;
        }

        return !said.Asked && said.Word(last) is "not" && said.Word(last - 1) is "is" or "are" or "does" && said.Word(last - 2) is "it" or "they" && Best.Contains(said.Word(last - 3));
    }

    // “Not cut”, “nothing missing”, “without a gap”.
    private static bool IsSpared(Segment said, int at) => Enumerable.Range(at - 4, 4).Any(before => said.Word(before) is "not" or "no" or "never" or "nothing" or "without" or "hardly" or "barely" or "none" or "been");
}
