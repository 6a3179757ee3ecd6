using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Demo;

/// <summary>What the students of the demo wrote on their intakes.</summary>
internal static class DemoIntakes
{
    /// <summary>What the teacher answered, by question.</summary>
    public static readonly IReadOnlyDictionary<string, string> Answers = new Dictionary<string, string>
    {
        ["Do my reeds need more playing in, or more scraping?"] =
            "Scraping first: all three needed a little, and that is done. Now they need playing, and no more scraping. For your next reed, go by the plan at the end of this letter; if it is still "
            + "slow to start after three days of playing, bring it to a lesson.",
        ["Is this one worth keeping for the wind band?"] = "Yes. It is steady, and it carries.",
        ["Did I leave the corners thin enough this time?"] = "Yes, in all three. Nothing is left to do there.",
    };

    /// <summary>Why the teacher took cane from a reed on which only safe changes were wanted, by the reed's number.</summary>
    public static string WhyTheKnife(int reed) => reed switch
    {
        1 => "A few light strokes are safe on a tip as strong as this one, and nothing else would have cleared the starts.",
        2 => "The back was so strong that a few strokes could not harm it, and I tried it after each pass.",
        _ => "One stroke on each corner was all, and I thought that safe.",
    };

    public static IntakeForm InesInSpring() => new()
    {
        Instrument = nameof(Instrument.Oboe),
        TunesTo = "442",
        Scrape = nameof(ScrapeStyle.LongScrape),
        Country = "Northmarch",
        Questions = "Do my reeds need more playing in, or more scraping?",
        Reeds =
        [
            new ReedForm
            {
                HowToRecognise = "moss green thread, number 1 on the cork",
                Bothers = "Soft notes don't start. I wait and then they jump out.",
                Permission = nameof(Permission.TakeRisks),
                Response = "2", Opening = "0", SoftPlaying = "2",
                TiedBy = "me", MadeHow = nameof(MadeHow.FromABlank), HoursPlayed = "2", UsedFor = nameof(ReedUse.Practice),
                Likes = "The middle notes sound warm.",
            },
            new ReedForm
            {
                HowToRecognise = "moss green thread, a white dot on the thread",
                Bothers = "The same, and it feels stiff after ten minutes.",
                Permission = nameof(Permission.SafeChangesOnly),
                Response = "2", Effort = "1", Tiredness = "2",
                TiedBy = "me", MadeHow = nameof(MadeHow.FromABlank), HoursPlayed = "1.5",
            },
            new ReedForm
            {
                HowToRecognise = "plum thread",
                Bothers = "The low notes come late.",
                Permission = nameof(Permission.SafeChangesOnly),
                Response = "1", SoftPlaying = "1",
                TiedBy = "me", MadeHow = nameof(MadeHow.FromABlank), HoursPlayed = "4", UsedFor = nameof(ReedUse.Lessons),
                Questions = "Is this one worth keeping for the wind band?",
            },
        ],
    };

    public static IntakeForm InesInAutumn() => new()
    {
        Instrument = nameof(Instrument.Oboe),
        TunesTo = "442",
        Scrape = nameof(ScrapeStyle.LongScrape),
        Country = "Northmarch",
        Reeds =
        [
            new ReedForm
            {
                HowToRecognise = "sea blue thread, one knot",
                Bothers = "It starts much better now. The beginning of a note is fuzzy.",
                Permission = nameof(Permission.SafeChangesOnly),
                Response = "0", Sound = "1", HoursPlayed = "3", TiedBy = "me", MadeHow = nameof(MadeHow.Tied),
                Likes = "It is the easiest reed I have made.",
            },
            new ReedForm
            {
                HowToRecognise = "sea blue thread, two knots",
                Bothers = "Fuzzy too, and a little flat by the end of a rehearsal.",
                Permission = nameof(Permission.TakeRisks),
                Intonation = "-1", Sound = "1", HoursPlayed = "5", TiedBy = "me", MadeHow = nameof(MadeHow.Tied),
                UsedFor = nameof(ReedUse.Concert),
            },
            new ReedForm
            {
                HowToRecognise = "sea blue thread, no knot, a pencil line on the staple",
                Bothers = "I can't say. It is just dull.",
                Permission = nameof(Permission.TakeRisks),
                Sound = "2", HoursPlayed = "1", TiedBy = "me", MadeHow = nameof(MadeHow.Tied),
                Questions = "Did I leave the corners thin enough this time?",
            },
        ],
    };

    public static IntakeForm Tomas() => new()
    {
        Instrument = nameof(Instrument.Oboe),
        Country = "Northmarch",
        Questions = "I have had these for years. Are any of them still good?\nHow long should I soak a reed?",
        Reeds =
        [
            new ReedForm
            {
                HowToRecognise = "red thread, cork a little chewed",
                Bothers = "Too open for me. My lip gives up after one hymn.",
                Permission = nameof(Permission.TakeRisks), Opening = "2", Effort = "2", Tiredness = "2",
                MadeHow = nameof(MadeHow.BoughtFinished), HoursPlayed = "20",
            },
            new ReedForm
            {
                HowToRecognise = "yellow thread",
                Bothers = "Sharp against the organ.",
                Permission = nameof(Permission.SafeChangesOnly), Intonation = "2", MadeHow = nameof(MadeHow.BoughtFinished),
            },
            new ReedForm
            {
                HowToRecognise = "black thread with a paper flag",
                Bothers = "Nothing much. I would like to know why it is better than the others.",
                Permission = nameof(Permission.AdviseOnly), Response = "0", Intonation = "0", Effort = "0",
                MadeHow = nameof(MadeHow.BoughtFinished), Likes = "Everything.",
            },
            new ReedForm
            {
                HowToRecognise = "orange thread, no mark",
                Bothers = "Leaks, I think.",
                Permission = nameof(Permission.TakeRisks), MadeHow = nameof(MadeHow.BoughtFinished),
            },
        ],
    };

    public static IntakeForm Wilma() => new()
    {
        Instrument = nameof(Instrument.CorAnglais),
        TunesTo = "440",
        Scrape = nameof(ScrapeStyle.ShortScrape),
        Country = "Northmarch",
        Reeds =
        [
            new ReedForm
            {
                HowToRecognise = "grey thread, wire with one turn",
                Bothers = "The long solo in the slow movement starts with a bump.",
                Permission = nameof(Permission.SafeChangesOnly), Response = "1", SoftPlaying = "2",
                UsedFor = nameof(ReedUse.Concert), HoursPlayed = "6",
                Questions = "Could it be ready by the end of the month?",
            },
            new ReedForm
            {
                HowToRecognise = "grey thread, wire with two turns",
                Bothers = "Goes soft in the middle of the evening.",
                Permission = nameof(Permission.SafeChangesOnly), Tiredness = "-1", HighNotes = "-2", HoursPlayed = "9",
            },
        ],
    };
}
