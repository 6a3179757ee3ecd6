namespace ReedClinic.Domain.Intake;

/// <summary>
/// Finds in what a student wrote whatever calls for a caution. It locks nothing and tells nobody what they have: a caution too many
/// costs a line, one too few may cost more, so only what plainly says “no” counts as no. The words are common practice, with no source.
/// </summary>
public static class Cautions
{
    /// <summary>The cautions that some texts call for, each once, in the order of <see cref="Caution"/>.</summary>
    /// <param name="texts">What was written: complaints, questions, what was tried. Nothing is fine.</param>
    /// <returns>Empty when nothing calls for one.</returns>
    public static IReadOnlyList<Caution> In(params IEnumerable<string?> texts)
    {
        ArgumentNullException.ThrowIfNull(texts);
        var sentences = texts.SelectMany(SaidSentence.Of).ToList();
        return [.. Enum.GetValues<Caution>().Where(caution => sentences.Any(sentence => IsIn(caution, sentence)))];
    }

    private static bool IsIn(Caution caution, SaidSentence said) => caution switch
    {
        Caution.Body => Body(said),
        Caution.Illness => Illness(said),
        Caution.Dirt => Dirt(said),
        _ => Knife(said),
    };

    private static bool Body(SaidSentence said) =>
        said.Says(at => CautionWords.SureOfBody.Contains(said[at]))
        || said.Says(at => said[at] is "faint" && (Near(said, at, -3, CautionWords.Feel) || CautionWords.Self.Contains(said[at - 1])))
        || said.Says(at => CautionWords.Swell.Contains(said[at]) && (IsAPartNear(said, at, -3) || IsAPartNear(said, at, 3)))
        || said.Says(at => CautionWords.Hurts.Contains(said[at]) && !said.Any(CautionWords.Ears) && !Near(said, at, 2, CautionWords.OnlyHeard) && !IsIdiom(said, at))
        || (said.Says(at => IsAPart(said, at), evenDenied: true) && said.Says(at => CautionWords.WithAPart.Contains(said[at]) && !IsCuttingOut(said, at)))
        || said.Says(at => said[at] is "feeling" && said[at + 1] is "in" && Near(said, at, -3, CautionWords.Lost), evenDenied: true)
        || said.Says(at => said[at] is "feel" or "feeling" && Near(said, at, -3, CautionWords.Unfelt) && IsAPartNear(said, at, 3), evenDenied: true);

    // “A pain to play” and “painful to hear” are about the reed.
    private static bool IsIdiom(SaidSentence said, int at) => said[at] is "pain" && said[at - 1] is "a" && said[at + 1] is not "in";

    // A note that stops.
    private static bool IsCuttingOut(SaidSentence said, int at) => said[at] is "cut" or "cuts" && said[at + 1] is "out";

    private static bool IsAPart(SaidSentence said, int at) =>
        CautionWords.Parts.Contains(said[at]) && !(said[at] is "tongue" && CautionWords.BeforeTonguing.Contains(said[at - 1]));

    private static bool IsAPartNear(SaidSentence said, int at, int reach) =>
        Enumerable.Range(1, Math.Abs(reach)).Any(step => IsAPart(said, at + (Math.Sign(reach) * step)));

    private static bool Illness(SaidSentence said) =>
        said.Says(at => CautionWords.SureOfIllness.Contains(said[at]))
        || said.Says(at => said[at] is "temperature" && CautionWords.BeforeATemperature.Contains(said[at - 1]) && !CautionWords.Weather.Contains(said[at + 1]))
        || said.Says(at => said[at] is "bug" && CautionWords.Stomach.Contains(said[at - 1]))
        || said.Says(at => said[at] is "sick" && said[at + 1] is not ("of" or "to"))
        || said.Says(at => said[at] is "throat" && Near(said, at, -2, CautionWords.Sore))
        || said.Says(at => said[at] is "nose" && said[at - 1] is "runny" or "running")
        || said.Says(at => said[at] is "cold" && IsAnIllness(said, at));

    // “A cold”, “my cold”, “a bad cold”, “caught cold”, “the cold I had”: and not “a cold room”, “in the cold” or “the cold and the dry air”.
    private static bool IsAnIllness(SaidSentence said, int at)
    {
        if (CautionWords.Caught.Contains(said[at - 1]) || (said[at - 1] is "the" && said[at - 2] is not "in" && CautionWords.Self.Contains(said[at + 1])))
        {
            return true;
        }

        var first = CautionWords.HowBad.Contains(said[at - 1]) ? at - 2 : at - 1;
        return (CautionWords.Holders.Contains(said[first]) || (first < at - 1 && said[first] is "the")) && said[first - 1] is not "in"
            && (said[at + 1].Length == 0 || CautionWords.AfterACold.Contains(said[at + 1]));
    }

    private static bool Dirt(SaidSentence said) =>
        said.Says(at => CautionWords.SureOfDirt.Contains(said[at]) || CautionWords.Dirt.Contains(said[at]))
        || said.Says(at => CautionWords.Smells.Contains(said[at]) && !Near(said, at, 2, CautionWords.GoodSmells))
        || said.Says(at => CautionWords.Dirty.Contains(said[at]) && !Near(said, at, -4, CautionWords.OnlyHeard) && !Near(said, at, 2, CautionWords.OnlyHeard))
        || ((said.Any(CautionWords.PartsOfAReed) || !said.Any(CautionWords.OnlyHeard)) && said.Says(at => CautionWords.Furry.Contains(said[at])))
        || said.Says(at => CautionWords.Spots.Contains(said[at]) && (Near(said, at, -3, CautionWords.Colours) || Near(said, at, 3, CautionWords.Colours)))
        || said.Says(at => CautionWords.Turned.Contains(said[at]) && Near(said, at, 3, CautionWords.Colours))
        || said.Says(at => CautionWords.DarkColours.Contains(said[at]) && !CautionWords.Coloured.Contains(said[at + 1]) && (Near(said, at, -3, CautionWords.Within) || Near(said, at, 3, CautionWords.Within)))
        || said.Says(at => CautionWords.Growing.Contains(said[at]) && Near(said, at, -2, CautionWords.Something))
        || (said.Any(CautionWords.Animals) && said.Says(at => CautionWords.AnimalDoes.Contains(said[at])));

    private static bool Knife(SaidSentence said) => said.Says(
        at => (IsWork(said, at) || CautionWords.Tools.Contains(said[at]) || IsTakingOff(said, at)) && IsMeantByTheWriter(said, at));

    // “I want it thin” asks for nothing but a thin one.
    private static bool IsWork(SaidSentence said, int at) =>
        CautionWords.Works.Contains(said[at]) && CautionWords.AfterWork.Contains(said[at + 1]) && !CautionWords.BeforeNoWork.Contains(said[at - 1])
        && !(said[at] is "thin" && said[at + 1] is "" or ",");

    private static bool IsTakingOff(SaidSentence said, int at) => said[at] is "take" && Near(said, at, 6, CautionWords.Off);

    // “Can I …”, “I want to …”, “is it all right to …”, “… before I send it”: not “can you … so that I can play”, and not what was done.
    private static bool IsMeantByTheWriter(SaidSentence said, int work)
    {
        var who = Enumerable.Range(1, work).Select(step => work - step).Where(at => IsSomebody(said, at)).Append(-1).First();
        if (CautionWords.Others.Contains(said[who]))
        {
            return false;
        }

        var byOneself = said.Any(CautionWords.ByOneself) && CautionWords.Works.Contains(said[work]);
        return byOneself || said.Says(at => said[at] is "before" && Near(said, at, 4, CautionWords.Posting) && !IsSentBack(said, at), evenDenied: true)
            || (!CautionWords.WorksOfATeacher.Contains(said[work]) && (IsMeant(said, who) || said.Says(
                at => CautionWords.AllRight.Contains(said[at]) && (Near(said, at, 2, CautionWords.To) || Near(said, at, 3, CautionWords.Self)), evenDenied: true)));
    }

    private static bool IsSomebody(SaidSentence said, int at) =>
        CautionWords.Self.Contains(said[at]) || CautionWords.Others.Contains(said[at]) || IsMe(said, at);

    private static bool IsMe(SaidSentence said, int at) => said[at] is "me" && (said[at + 1] is "to" || said[at - 1] is "let");

    private static bool IsMeant(SaidSentence said, int who) => IsMe(said, who)
        || (CautionWords.Self.Contains(said[who]) && (CautionWords.May.Contains(said[who - 1]) || said[who - 1] is "n't" || Near(said, who, 3, CautionWords.May)));

    // “… before you send it back” is the teacher’s.
    private static bool IsSentBack(SaidSentence said, int before) =>
        Enumerable.Range(before + 1, 4).Any(at => CautionWords.Posting.Contains(said[at]) && Near(said, at, 2, CautionWords.Back));

    private static bool Near(SaidSentence said, int at, int reach, HashSet<string> words) =>
        Enumerable.Range(1, Math.Abs(reach)).Any(step => words.Contains(said[at + (Math.Sign(reach) * step)]));
}
