using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters.Drafts;

/// <summary>A batch that is invented from a number: the same number gives the same batch, its ids apart from the batch's own may differ.</summary>
internal sealed class InventedBatch
{
    private static readonly string[] Students =
    [
        "Pim Larkspur", "Oona Saltmarsh", "Bram Tidewater", "Lotte Heron", "Fenn Alder", "Sanne Windrow", "Jory Pike", "Wilma Reeve",
        "Ansel Marl", "Dilys Fen", "Tove Sandpiper", "Ruben Quill", "Maeve Dunlin", "Ivo Teasel", "Greta Shingle", "Corin Vetch",
        "Nell Harrow", "Sorrel Bright", "Hanne Mew", "Edric Loam",
    ];

    private static readonly string[] Questions =
    [
        "Which one should I play first?", "How many days should I wait between scraping and playing?", "Is my knife too blunt?",
        "May I play these in the rain at the parade?", "Do I need a new staple?", "Should I soak them in my mouth?",
        "How will I know when to stop scraping?",
    ];

    private static readonly string[] Answers =
    [
        "Begin with number one", "Two or three days, if you can bear it", "I think it only wants a few strokes on the stone",
        "Better not: keep an old one for parades", "Not yet; these are sound", "Fresh water is kinder", "When the last stroke made no difference",
    ];

    private static readonly string[] Habits =
    [
        "Perhaps the knife turns back just before it reaches the corner.", "Perhaps it comes from scraping in a dim light.",
        "Perhaps your hand likes one side better than the other.", "Perhaps the knife is a little blunt by the end of the evening.",
        "Perhaps you stop for fear of spoiling it.", "Perhaps the plaque lies askew.",
    ];

    private static readonly string[] Whys =
    [
        "every stroke was giving less", "the opening began to fall", "it was good enough to leave alone", "the light had gone",
        "I heard nothing more to win", "the cane was getting tired",
    ];

    private readonly HashSet<string> _typed = [];
    private readonly Random _dice;
    private readonly Random _marks;
    private readonly int _seed;

    private InventedBatch(int seed, Guid? batch)
    {
        (_seed, _dice, _marks) = (seed, new Random(seed * 7919), new Random(seed * 104729));
        var count = (seed % 5) + 1;
        Troubles = [.. Enumerable.Range(0, count).Select(_ => Pick(InventedTrouble.All))];
        Lesson = Pick(InventedTrouble.All);
        Scene = new LetterScene(count, batch ?? IdOf(seed), Fill) { Student = Students[seed % Students.Length] };
        for (var number = 1; number <= count; number++)
        {
            Arrive(number);
        }

        Answer();
        Choose();
        Remember(new Random(seed * 15485863));
    }

    public LetterScene Scene { get; }

    /// <summary>What the student or the teacher typed.</summary>
    public IReadOnlySet<string> Typed => _typed;

    private InventedTrouble[] Troubles { get; }

    private InventedTrouble Lesson { get; }

    /// <summary>The batch of a number.</summary>
    /// <param name="seed">The number.</param>
    /// <param name="batch">The batch's id; one that is made from the number where it isn't said.</param>
    public static InventedBatch Of(int seed, Guid? batch = null) => new(seed, batch);

    private static Guid IdOf(int seed) =>
        Guid.ParseExact(FormattableString.Invariant($"0196a1b0-{seed:x4}-7c3d-8e5f-{seed * 40503L:x12}"), "D");

    private T Pick<T>(IReadOnlyList<T> of) => of[_dice.Next(of.Count)];

    private bool Chance(int percent) => _dice.Next(100) < percent;

    private string Type(string words)
    {
        _typed.Add(words);
        return words;
    }

    private void Fill(IntakeForm form)
    {
        form.Instrument = Chance(80) ? "Oboe" : "CorAnglais";
        form.Questions = Chance(60) ? Type(Pick(Questions)) : null;
        foreach (var (reed, index) in form.Reeds.Select((reed, index) => (reed, index)))
        {
            reed.HowToRecognise = Type(Pick(["blue thread", "red thread", "a nick in the cork", "green thread, new"]) + FormattableString.Invariant($", tag {index + 1}"));
            reed.Bothers = Type(Troubles[index].Bothers);
            reed.Likes = Chance(25) ? Type(Pick(["the middle notes", "that it is never shrill", "how it slurs"])) : null;
            reed.Permission = Pick(["TakeRisks", "TakeRisks", "TakeRisks", "SafeChangesOnly", "AdviseOnly"]);
            reed.UsedFor = Chance(60) ? Pick(["Practice", "Lessons", "Concert", "Spare"]) : null;
            reed.HoursPlayed = Chance(40) ? FormattableString.Invariant($"{_dice.Next(1, 30)}") : null;
            reed.Questions = Chance(20) ? Type(Pick(Questions)) : null;
            Mark(reed);
        }
    }

    // Every third reed has a mark or two on the scales.
    private void Mark(ReedForm reed)
    {
        if (_marks.Next(3) > 0)
        {
            return;
        }

        string Side() => FormattableString.Invariant($"{(_marks.Next(2) == 0 ? -1 : 1) * _marks.Next(1, 3)}");
        Action<string>[] scales = [mark => reed.Response = mark, mark => reed.Intonation = mark, mark => reed.Opening = mark, mark => reed.Effort = mark, mark => reed.Sound = mark, mark => reed.SoftPlaying = mark, mark => reed.HighNotes = mark, mark => reed.Tiredness = mark];
        for (var marks = _marks.Next(1, 3); marks > 0; marks--)
        {
            scales[_marks.Next(scales.Length)](Side());
        }
    }

    private void Arrive(int number)
    {
        var mishap = number > 1 ? _dice.Next(20) : 20;
        if (mishap == 0)
        {
            Scene.Arrive(number, new ReedArrival(Presence.Missing));
            return;
        }

        var fitness = mishap switch { 1 => Fitness.Mould, 2 => Fitness.DryFirst, _ => Fitness.Fit };
        var wound = Chance(50);
        Scene.Arrive(number, new ReedArrival(
            Presence.Here,
            Chance(50) ? Type(Pick(["pencil dot near the thread", "a small cross in ink", "the darker bark"])) : null,
            wound ? Pick([WindingHand.Left, WindingHand.Right]) : WindingHand.NotRead,
            wound ? Overlap.UpperToTheLeft : Overlap.NotRead,
            wound ? Chance(70) : null,
            mishap == 3 ? Type("a corner chipped in the post") : null,
            fitness));
        if (fitness != Fitness.Mould)
        {
            Work(number);
        }
    }

    private void Work(int number)
    {
        var reed = Scene.Reed(number);
        List<InventedTrouble> troubles = Chance(75) ? [Lesson] : [];
        troubles.AddRange(troubles.Count == 0 || Chance(50) ? [Troubles[number - 1]] : []);
        foreach (var strength in InventedTrouble.StrengthsBeside(troubles).OrderBy(_ => _dice.Next()).Take(_dice.Next(1, 4)))
        {
            var kind = FindingCatalogue.Find(new(strength))!;
            Scene.Log(number, Finding.Of(kind.Id, FindingCharacter.Strength, new Place(kind.Zone)));
        }

        if (Chance(20))
        {
            var taste = Pick(["more-open-than-liked", "brighter-than-liked", "tip-blunter-than-liked"]);
            if (!(taste.StartsWith("more-open", StringComparison.Ordinal) && troubles.Exists(trouble => trouble.IsOfTheOpening)))
            {
                Scene.Log(number, Finding.Of(new(taste), FindingCharacter.Taste, new Place(Zone.Opening)));
            }
        }

        var found = troubles.DistinctBy(trouble => trouble.Kind).Select(trouble => (Trouble: trouble, Id: Found(number, trouble))).ToList();
        var tests = found.SelectMany(pair => pair.Trouble.Tests).Append(TestKind.Crow).Distinct().ToList();
        tests.ForEach(test => Scene.Log(number, Test.Of(test, Off(test, _dice.Next(2), troubles))));
        var worked = reed.MayBeScraped && Chance(85) && Mend(number, found, tests);
        End(number, worked);
    }

    // On which end of its scale a test lies: a wide opening isn't closed, and a narrow one isn't flat.
    private static int Off(TestKind test, int step, List<InventedTrouble> troubles) =>
        troubles.Exists(trouble => trouble.IsHigh(test)) ? TestScale.Of(test).Steps.Count - 1 - step : step;

    private EntryId Found(int number, InventedTrouble trouble)
    {
        var kind = FindingCatalogue.Find(new(trouble.Kind))!;
        return Scene.Log(number, Finding.Of(
            kind.Id,
            FindingCharacter.Fault,
            new Place(kind.Zone, Chance(15) ? Blades.Upper : Blades.Both, Chance(15) ? Sides.Left : Sides.Both),
            knownBy: Pick([KnownBy.NotSaid, KnownBy.Light, KnownBy.Plaque, KnownBy.Ear]),
            certainty: Chance(12) ? Certainty.Suspected : Certainty.Certain,
            arose: Chance(5) ? Arose.CausedByTheWork : Arose.AsItArrived));
    }

    private bool Mend(int number, List<(InventedTrouble Trouble, EntryId Id)> found, List<TestKind> tests)
    {
        var safe = Scene.Reed(number).Permission == Permission.SafeChangesOnly;
        var works = found.SelectMany(pair => pair.Trouble.Works.Select(work => (Kind: AdjustmentCatalogue.Find(new(work))!, pair.Id)))
            .Where(work => !safe || work.Kind.Reversible != Reversible.No).ToList();
        if (works.Count > 0 && Chance(25))
        {
            Scene.Log(number, RiskClosed.Of(Scene.Log(number, Risk.Of(Type("the corner may tear"))), Pick([RiskOutcome.DidNotHappen, RiskOutcome.DidNotHappen, RiskOutcome.Happened])));
        }

        foreach (var (kind, id) in works)
        {
            for (var times = Chance(30) ? 2 : 1; times > 0; times--)
            {
                Scene.Log(number, Adjustment.Of(kind.Id, new Place(kind.Zone), kind.UsualAmount?.Contains("stroke", StringComparison.Ordinal) == true && Chance(80) ? new Amount(_dice.Next(1, 5)) : Amount.NotSaid, id));
                Scene.Log(number, Test.Of(tests[0], Math.Min(2, TestScale.Of(tests[0]).Steps.Count - 1)));
            }
        }

        if (works.Count > 0)
        {
            tests.ForEach(test => Scene.Log(number, Test.Of(test, TestScale.Of(test).Good)));
            found.ForEach(pair => Scene.Log(number, FindingEnded.Of(pair.Id, pair.Trouble.EndsAs(Pick([FindingEnding.Gone, FindingEnding.Gone, FindingEnding.Better, FindingEnding.Unchanged])))));
        }

        return works.Count > 0;
    }

    private void End(int number, bool worked)
    {
        if (Chance(40))
        {
            Scene.Log(number, LeaveAlone.Of(new Place(Pick([Zone.HeartCentre, Zone.TipCentre, Zone.Spine])), Type("it is just right as it is")));
        }

        if (worked && Chance(70))
        {
            Scene.Log(number, Stopped.Of(Type(Pick(Whys))));
        }

        var verdict = worked
            ? Pick([VerdictKind.Improved, VerdictKind.Improved, VerdictKind.Improved, VerdictKind.StoppedToProtectIt, VerdictKind.NeedsPlayingIn, VerdictKind.AsGoodAsThisCaneGets, VerdictKind.GoodOnArrivalRefined])
            : Pick([VerdictKind.LeftAsItCame, VerdictKind.LeftAsItCame, VerdictKind.NotToBeSaved]);
        Scene.Log(number, Verdict.Of(verdict, Chance(20) && verdict != VerdictKind.NotToBeSaved ? Type("I like this one a good deal") : null));
    }

    private void Answer()
    {
        foreach (var question in Scene.Batch.Questions)
        {
            question.AnswerWith(Type(Answers[Array.IndexOf(Questions, question.Text)]), Scene.Batch.SubmittedAt);
        }

        Scene.Batch.NoteOnArrival(Chance(15) ? Type("The box had been well packed") : null, inLetter: true);
    }

    private void Choose()
    {
        var here = Scene.Batch.Reeds.Where(reed => reed.IsHere).ToList();
        Tally Count(string kind) => new(
            here.Count(reed => Scene.Material.LogOf(reed.Id).Findings.Any(finding => finding.Finding.FindingKind.Value == kind)), here.Count, here.Count);
        string? Evidence(string kind) => Count(kind) is { Found: > 0 } tally ? EvidenceSentence.For(tally, default) : null;

        var strength = InventedTrouble.Strengths.MaxBy(kind => Count(kind).Found)!;
        var lesson = Evidence(Lesson.Kind) is null ? null : Lesson;
        Scene.Thread = new LetterThread(
            lesson is null ? null : new FindingKindId(lesson.Kind),
            lesson is null || Chance(20) ? Type(FormattableString.Invariant($"Give each reed a night of rest before you judge it, as I said {_seed} days ago")) : null,
            lesson is null ? null : Evidence(lesson.Kind),
            Chance(80) && Evidence(strength) is not null ? new FindingKindId(strength) : null,
            null,
            Evidence(strength),
            Chance(60) ? Type(Pick(Habits)) : null);
    }

    // Two letters of three have one before them; what it taught was looked for on each reed, and is there again or not.
    private void Remember(Random dice)
    {
        if (dice.Next(3) == 0)
        {
            return;
        }

        var kind = new FindingKindId(dice.Next(2) == 0 ? Lesson.Kind : InventedTrouble.All[dice.Next(InventedTrouble.All.Count)].Kind);
        foreach (var reed in Scene.Batch.Reeds.Where(reed => reed.MayBePlayed && Scene.Material.LogOf(reed.Id).Findings.All(finding => finding.Finding.FindingKind != kind)))
        {
            Scene.Log(reed.Number, LookedFor.Of(kind));
        }

        var reeds = dice.Next(1, 5);
        Scene.Earlier = new(kind, new(dice.Next(1, reeds + 1), reeds, reeds), [new EntryId(LetterScene.Id())]);
    }
}
