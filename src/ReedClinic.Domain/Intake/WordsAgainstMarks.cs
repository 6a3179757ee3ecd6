using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters;

namespace ReedClinic.Domain.Intake;

/// <summary>A mark on a scale of the intake beside words that say the opposite of it.</summary>
public static partial class WordsAgainstMarks
{
    private const string Starts = "the beginnings of notes";

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
               where mark is { } marked && (marked.Value == 0 ? said.Any(one => IsOf(words.Aspect, one)) : IsAgainst(words.Aspect, Math.Sign(marked.Value), said))
               select (words.Question, words.Say(mark.Value)),
        ];
    }

    [GeneratedRegex(@"\b(not|never|no longer|no more|any ?more|(is|was|are|were|has|have)n['’]?t)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Denied();

    // A note that won’t start doesn’t come too easily.
    private static bool IsAgainst(Aspect aspect, int way, IReadOnlyList<Complaint> said) =>
        IsOpposite(ComplaintsMarked.Of(aspect, way), said) || (aspect == Aspect.Response && way < 0 && said.Any(one => IsOf(aspect, one)));

    // What is just right isn’t complained of.
    private static bool IsOf(Aspect aspect, Complaint said) => aspect switch
    {
        Aspect.Response => said.Name == Starts || (said.Test == TestKind.SoftestStart && Start().IsMatch(said.Told)),
        Aspect.Intonation => said.Test == TestKind.TuningNote,
        Aspect.Opening => said.Test == TestKind.Opening,
        Aspect.Effort => said.Test == TestKind.Effort && said.Way != 0,
        Aspect.Sound => said.Test is TestKind.Edge or TestKind.Depth,
        _ => false,
    };

    [GeneratedRegex(@"\b(start|speak)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Start();

    private static bool IsOpposite(Complaint marked, IReadOnlyList<Complaint> said) => marked.Way != 0
        && said.Any(one => one.Test == marked.Test && one.Way == -marked.Way) && !said.Any(one => one.Test == marked.Test && one.Way == marked.Way);
}
