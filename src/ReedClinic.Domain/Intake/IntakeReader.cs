using System.Globalization;
using System.Text.RegularExpressions;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Intake;

/// <summary>
/// Makes an announcement of what was typed, or says what is wrong beside each field. Fields are named as in
/// <see cref="IntakeForm"/>: “TunesTo”, “Reeds[0].HoursPlayed”.
/// </summary>
public static partial class IntakeReader
{
    /// <summary>Reads a whole intake.</summary>
    /// <param name="form">What was typed.</param>
    public static Outcome<AnnouncedBatch> Read(IntakeForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        var problems = new List<Problem>();
        if (form.Reeds.Count is 0 or > Batch.MostReeds)
        {
            problems.Add(new Problem(nameof(form.Reeds), form.Reeds.Count == 0
                ? "Add at least one reed."
                : "A batch can hold 12 reeds. Please send the others in a second batch."));
        }

        CountryName.Read(form.Country, nameof(form.Country), problems);
        var batch = new AnnouncedBatch(
            Choice<Instrument>(form.Instrument, nameof(form.Instrument), problems),
            ReadTuning(form.TunesTo, nameof(form.TunesTo), problems),
            Choice<ScrapeStyle>(form.Scrape, nameof(form.Scrape), problems),
            [.. form.Reeds.Take(Batch.MostReeds).Select((reed, index) => ReadReed(reed, index, problems))],
            ReadQuestions(form.Questions, nameof(form.Questions), problems));
        TellApart(form, problems);
        return problems.Count == 0
            ? new Outcome<AnnouncedBatch>.Done(batch)
            : new Outcome<AnnouncedBatch>.Refused(problems);
    }

    /// <summary>What is wrong with one reed; empty when it could be sent as it is.</summary>
    /// <param name="reed">What was typed about it.</param>
    /// <param name="index">Its place in the form, from 0; it stands in the names of the fields.</param>
    public static IReadOnlyList<Problem> CheckReed(ReedForm reed, int index)
    {
        ArgumentNullException.ThrowIfNull(reed);
        var problems = new List<Problem>();
        ReadReed(reed, index, problems);
        return problems;
    }

    /// <summary>Reads what somebody tunes to; null for nothing typed, or with a problem.</summary>
    /// <param name="typed">The A4 in hertz.</param>
    /// <param name="field">The form field that a problem names.</param>
    /// <param name="problems">Where a problem goes.</param>
    public static Tuning? ReadTuning(string? typed, string field, ICollection<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(problems);
        if (string.IsNullOrWhiteSpace(typed))
        {
            return null;
        }

        if (Number(typed) is not { } a4)
        {
            problems.Add(new Problem(field, "Give the A as a number of hertz, such as 440 or 442, or choose “I’m not sure”."));
            return null;
        }

        if (a4 is >= Tuning.LowestA4Hz and <= Tuning.HighestA4Hz)
        {
            return new Tuning(new Hertz(a4));
        }

        problems.Add(new Problem(field, string.Create(
            CultureInfo.InvariantCulture,
            $"We can work with an A from {Tuning.LowestA4Hz} to {Tuning.HighestA4Hz} hertz; most orchestras are near 440. Please check the number.")));
        return null;
    }

    // Two reeds in the same words would be taken for each other, and the wrong one scraped: the later one has to say more.
    private static void TellApart(IntakeForm form, List<Problem> problems)
    {
        var first = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        foreach (var (reed, index) in form.Reeds.Take(Batch.MostReeds).Select((reed, index) => (reed, index)))
        {
            var words = string.Join(' ', (reed.HowToRecognise ?? "").Split([' ', '\t', '\n', '\r', '\u00A0', ',', '.', ';'], StringSplitOptions.RemoveEmptyEntries));
            if (words.Length > 0 && !first.TryAdd(words, index))
            {
                problems.Add(new Problem(
                    string.Create(CultureInfo.InvariantCulture, $"Reeds[{index}].{nameof(reed.HowToRecognise)}"),
                    string.Create(CultureInfo.InvariantCulture, $"Reed {first[words] + 1} is described in the same words, so the wrong one could be scraped. Put a mark on one of them, such as a pencil dot on the cork, and say so.")));
            }
        }
    }

    private static AnnouncedReed ReadReed(ReedForm form, int index, List<Problem> problems)
    {
        var at = string.Create(CultureInfo.InvariantCulture, $"Reeds[{index}].");
        var recognise = Required(
            form.HowToRecognise, at + nameof(form.HowToRecognise), IntakeLimits.HowToRecognise, "Say how to tell this reed from the others.", problems);
        var bothers = Required(
            form.Bothers, at + nameof(form.Bothers), IntakeLimits.Bothers, "Say what bothers you about this reed.", problems);
        var permission = Choice<Permission>(form.Permission, at + nameof(form.Permission), problems);
        if (permission is null && string.IsNullOrWhiteSpace(form.Permission))
        {
            problems.Add(new Problem(at + nameof(form.Permission), "Say how far the teacher may go with this reed."));
        }

        return new AnnouncedReed(recognise, bothers, permission ?? Permission.AdviseOnly)
        {
            Scales = ReadScales(form, at, problems),
            TiedBy = PlainText.Read(form.TiedBy, at + nameof(form.TiedBy), IntakeLimits.TiedBy, problems),
            MadeHow = Choice<MadeHow>(form.MadeHow, at + nameof(form.MadeHow), problems),
            MinutesPlayed = ReadHours(form.HoursPlayed, at + nameof(form.HoursPlayed), problems),
            LastTried = PlainText.Read(form.LastTried, at + nameof(form.LastTried), IntakeLimits.LastTried, problems, severalLines: true),
            UsedFor = Choice<ReedUse>(form.UsedFor, at + nameof(form.UsedFor), problems),
            Likes = PlainText.Read(form.Likes, at + nameof(form.Likes), IntakeLimits.Likes, problems, severalLines: true),
            Questions = ReadQuestions(form.Questions, at + nameof(form.Questions), problems),
        };
    }

    /// <summary>What is marked of a reed; what can’t be read counts as not marked.</summary>
    internal static ReedScales Scales(ReedForm form) => ReadScales(form, "", []);

    private static ReedScales ReadScales(ReedForm form, string at, List<Problem> problems) => new()
    {
        Response = Mark(form.Response, at + nameof(form.Response), problems),
        Intonation = Mark(form.Intonation, at + nameof(form.Intonation), problems),
        Opening = Mark(form.Opening, at + nameof(form.Opening), problems),
        Effort = Mark(form.Effort, at + nameof(form.Effort), problems),
        Sound = Mark(form.Sound, at + nameof(form.Sound), problems),
        SoftPlaying = Mark(form.SoftPlaying, at + nameof(form.SoftPlaying), problems),
        HighNotes = Mark(form.HighNotes, at + nameof(form.HighNotes), problems),
        Tiredness = Mark(form.Tiredness, at + nameof(form.Tiredness), problems),
    };

    private static string Required(string? typed, string field, int longest, string ask, List<Problem> problems)
    {
        var before = problems.Count;
        var text = PlainText.Read(typed, field, longest, problems, severalLines: true);
        if (text is null && problems.Count == before)
        {
            problems.Add(new Problem(field, ask));
        }

        return text ?? "";
    }

    private static T? Choice<T>(string? typed, string field, List<Problem> problems)
        where T : struct, Enum
    {
        var text = (typed ?? "").Trim();
        if (text.Length == 0)
        {
            return null;
        }

        // Names only: Enum.TryParse would also take numbers and several names at once.
        if (!Enum.TryParse<T>(text, out var choice) || !Enum.IsDefined(choice) || choice.ToString() != text)
        {
            problems.Add(new Problem(field, "Please choose one of the answers."));
            return null;
        }

        return choice;
    }

    private static ScaleMark? Mark(string? typed, string field, List<Problem> problems)
    {
        if (string.IsNullOrWhiteSpace(typed))
        {
            return null;
        }

        if (int.TryParse(typed, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var mark) && mark is >= -2 and <= 2)
        {
            return new ScaleMark(mark);
        }

        problems.Add(new Problem(field, "Please choose one of the five marks, or “I don’t know”."));
        return null;
    }

    private static int? ReadHours(string? typed, string field, List<Problem> problems)
    {
        if (string.IsNullOrWhiteSpace(typed))
        {
            return null;
        }

        var hours = GuessedHours.Read(typed);
        var message = hours switch
        {
            null => "Give the hours as a number or a guess, such as 3, “about 4” or “4–5”, or leave it empty.",
            < 0 => "Hours can’t be less than nothing. Leave it empty if you don’t know.",
            > IntakeLimits.HoursPlayed => "That is more hours than a reed lives. Please check it.",
            _ => null,
        };
        if (message is null)
        {
            return (int)Math.Round(hours!.Value * 60);
        }

        problems.Add(new Problem(field, message));
        return null;
    }

    /// <summary>What of one reed’s answers will be taken for a question to answer in the letter; empty while there is too much to take.</summary>
    /// <param name="form">What was typed of it.</param>
    public static IReadOnlyList<string> QuestionsIn(ReedForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        var said = new AnnouncedReed("", form.Bothers ?? "", Permission.AdviseOnly) { LastTried = form.LastTried, Likes = form.Likes, Questions = ReadQuestions(form.Questions, "", []) };
        return [.. said.Questions, .. said.AskedInPassing];
    }

    /// <summary>The same of what is asked about all of them.</summary>
    /// <param name="form">What was typed.</param>
    public static IReadOnlyList<string> QuestionsIn(IntakeForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        return ReadQuestions(form.Questions, "", []);
    }

    /// <summary>Whether the same is asked more than once in what was typed: it is answered once.</summary>
    /// <param name="typed">What was typed, one question a line.</param>
    public static bool AsksTwice(string? typed)
    {
        var asked = Lines(typed).SelectMany(AskedQuestions.Each).ToList();
        return AskedQuestions.Once(asked).Count() < asked.Count;
    }

    // A “Why?” on a line of its own belongs to the question above it.
    private static string[] Lines(string? typed)
    {
        List<string> lines = [];
        foreach (var line in (typed ?? "").Split(['\n', '\r'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (lines.Count > 0 && lines[^1].EndsWith('?') && LoneWhy().IsMatch(line))
            {
                lines[^1] += " " + line;
            }
            else
            {
                lines.Add(line);
            }
        }

        return [.. lines];
    }

    [GeneratedRegex(@"(?i)^(?:and |but )?(?:why|why not|how|how so|how come|what for|since when)\s*[?!]+$")]
    private static partial Regex LoneWhy();

    private static List<string> ReadQuestions(string? typed, string field, List<Problem> problems)
    {
        var questions = Lines(typed);
        if (questions.Length > IntakeLimits.Questions)
        {
            problems.Add(new Problem(field, "Please keep it to five questions, one a line."));
            return [];
        }

        return [.. AskedQuestions.Once(questions.Select(text => PlainText.Read(text, field, Question.LongestText, problems)).OfType<string>().SelectMany(AskedQuestions.Each))];
    }

    private static double? Number(string? typed) => double.TryParse(
        (typed ?? "").Trim().Replace(',', '.').Replace('−', '-'),
        NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
        CultureInfo.InvariantCulture,
        out var number) && double.IsFinite(number)
        ? number
        : null;
}
