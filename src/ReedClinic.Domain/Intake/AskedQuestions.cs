using System.Text.RegularExpressions;

namespace ReedClinic.Domain.Intake;

/// <summary>Finds the questions in what somebody wrote: each question mark is one to answer, and so is “I would like to know why …” without one.</summary>
internal static partial class AskedQuestions
{
    /// <summary>
    /// The sentences that ask something, such as “Why does it do that?”. What can’t stand alone is asked with the sentence before it: “It squeaks. Why?”,
    /// “It is my best one. Is it?”; and a lone “Flat?” is none.
    /// </summary>
    /// <param name="words">What was written.</param>
    public static IEnumerable<string> In(string? words)
    {
        List<string> sentences = [.. Sentence().Matches(words ?? "").Select(match => match.Value.Trim()).Where(text => text.Length > 0)];
        List<string> asked = [];
        foreach (var (text, at) in sentences.Select((text, at) => (text, at)).Where(one => one.text.EndsWith('?') || WantsToKnow().IsMatch(one.text)))
        {
            if (at == 0 || !Leans().IsMatch(text))
            {
                asked.AddRange(text.Contains(' ', StringComparison.Ordinal) ? [text] : Array.Empty<string>());
                continue;
            }

            // What leans on another question is one with it.
            var goesOn = asked.Count > 0 && asked[^1].EndsWith(sentences[at - 1], StringComparison.Ordinal);
            var whole = $"{(goesOn ? asked[^1] : sentences[at - 1])} {text}";
            if (whole.Length <= Question.LongestText)
            {
                asked = [.. goesOn ? asked.SkipLast(1) : asked, whole];
            }
            else if (!goesOn)
            {
                asked = [.. asked, text];
            }
        }

        return asked.Where(text => text.Length <= Question.LongestText).Distinct();
    }

    /// <summary>The questions of one line, each with what was said before it; “Or longer?” belongs to the one before.</summary>
    /// <param name="line">What was written as one question.</param>
    public static IEnumerable<string> Each(string line)
    {
        List<string> each = [];
        foreach (var text in Pieces(line))
        {
            if (each.Count > 0 && (!text.EndsWith('?') || GoesOn().IsMatch(text) || text.Count(sign => sign == ' ') < 2) && !IsSame(text, each[^1]))
            {
                each[^1] += " " + text;
            }
            else
            {
                each.Add(text);
            }
        }

        return each;
    }

    /// <summary>Each question once. What leans on the one before it is never dropped: another “Why?” asks about something else.</summary>
    /// <param name="questions">Whole questions.</param>
    public static IEnumerable<string> Once(IEnumerable<string> questions)
    {
        HashSet<string> known = new(StringComparer.OrdinalIgnoreCase);
        return questions.Where(text => LeansOnOther().IsMatch(text) || Leans().IsMatch(text) || known.Add(Bare(text)));
    }

    // What stands between question marks, each with its own.
    private static IEnumerable<string> Pieces(string line) => Ends().Split(line).Select(text => text.Trim()).Where(text => text.Length > 0);

    private static bool IsSame(string text, string other) => string.Equals(Bare(text), Bare(other), StringComparison.OrdinalIgnoreCase);

    // By what two questions are the same: they may end in two question marks, or have another space in them. Signs inside count: “C#” is no “C”, nor “1.5” “15”.
    private static string Bare(string question) => Space().Replace(AtEnd().Replace(question.Trim().Replace('’', '\''), ""), " ");

    [GeneratedRegex(@"[^.!?…\n\r]+[.!?…]*")]
    private static partial Regex Sentence();

    // Said of now: who wondered once may know by now. From memory.
    [GeneratedRegex(@"(?i)\b(?:I(?:['’]d| would| should)(?: (?!not\b)\w+)? (?:like|love) to know|(?<!n['’]t |not )\bI(?: (?:also|really|just|do|still|only))* want to know|I(?:['’]m| am)?(?: (?:also|often|just|still|do|always|really))* wonder(?:ing)?),? (?:why|whether|how|if|what|which|when|where)\b")]
    private static partial Regex WantsToKnow();

    [GeneratedRegex(@"(?<=\?[!?”’)]*)\s+")]
    private static partial Regex Ends();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Space();

    [GeneratedRegex(@"(?<=\S)[\s?!.…”’""')]+$")]
    private static partial Regex AtEnd();

    [GeneratedRegex(@"(?i)^(?:or|and|but|if so|if not|why|how so)\b")]
    private static partial Regex GoesOn();

    [GeneratedRegex(@"(?i)^(?:or|and|but|if so|if not|how so)\b")]
    private static partial Regex LeansOnOther();

    // One asking word and little more, a verb and a pronoun with nothing to ask about, or what goes on from before.
    [GeneratedRegex(@"(?i)^(?:(?:and |but |so |or )?(?:why|how|what|which|when|where|who)(?: (?:so|not|come|then|else|now|one|ones|is it|is that|do you think))?|(?:and |but |so |or )?(?:really|right|true|yes|no|not|normal|correct|honestly|seriously|okay|ok)"
        + @"|(?:and |but |so |or )?(?:is|was|are|were|am|do|does|did|can|could|should|shall|would|will|has|have|had|may|might|must|isn['’]t|aren['’]t|don['’]t|doesn['’]t|can['’]t|shouldn['’]t|won['’]t|wouldn['’]t|haven['’]t|hasn['’]t)"
        + @" (?:it|that|this|they|these|those|he|she|I|you|we|there|one)(?: (?:so|too|not|really|then|now|all right|right|true|ok|okay|normal|usual|do that|do it|do so|be so))?|(?:and|but|or|so)\b[^?]*)\s*[?!]+$")]
    private static partial Regex Leans();
}
