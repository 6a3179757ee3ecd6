using System.Text.RegularExpressions;
using ReedClinic.Domain.Letters;

namespace ReedClinic.Domain.Intake;

/// <summary>A mark on a scale of the intake beside words that say the opposite of it.</summary>
public static partial class WordsAgainstMarks
{
    /// <summary>The marks that the words contradict, with the question that each answers. Words that complain of both ways, or deny something (“not too open”), contradict neither.</summary>
    /// <param name="reed">What was typed about a reed.</param>
    public static IReadOnlyList<(string Question, string Mark)> In(ReedForm reed)
    {
        ArgumentNullException.ThrowIfNull(reed);
        if (Denied().IsMatch(reed.Bothers ?? ""))
        {
            return [];
        }

        var scales = IntakeReader.Scales(reed);
        var said = Complaint.In(reed.Bothers ?? "");
        return
        [
            .. from words in AspectWords.All
               let mark = scales[words.Aspect]
               where mark is { Value: not 0 } && IsOpposite(ComplaintsMarked.Of(words.Aspect, Math.Sign(mark.Value.Value)), said)
               select (words.Question, words.Say(mark.Value)),
        ];
    }

    [GeneratedRegex(@"\b(not|never|no longer|no more|any ?more|(is|was|are|were|has|have)n['’]?t)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Denied();

    private static bool IsOpposite(Complaint marked, IReadOnlyList<Complaint> said) => marked.Way != 0
        && said.Any(one => one.Test == marked.Test && one.Way == -marked.Way) && !said.Any(one => one.Test == marked.Test && one.Way == marked.Way);
}
