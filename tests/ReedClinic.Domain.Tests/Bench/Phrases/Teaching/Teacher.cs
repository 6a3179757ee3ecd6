using ReedClinic.Domain.Bench.Phrases.Judging;

namespace ReedClinic.Domain.Tests.Bench.Phrases.Teaching;

/// <summary>Teaches the judge with labelled phrases and clauses, once: where its lessons are laid then is remembered.</summary>
internal sealed class Teacher
{
    private const double Slow = 0.03;
    private const double Quick = 0.05;
    private const double Little = 0.5;
    private const int Rounds = 20;
    private const int FewRounds = 6;
    private const int Parts = 3;

    // The phrases that PhraseTwistTests twists are left out, so that they prove something.
    private const string Twisted = "open";

    private static readonly string[] Unmaking = ["I'll ", "don't ", "if ", "should I ", "let me ", "she ", "I would ", "haven't ", "going to "];

    private readonly IReadOnlyList<(string Hand, IReadOnlyList<TaughtPhrase> Phrases)> hands;
    private readonly IReadOnlyList<(string Hand, IReadOnlyList<TaughtPhrase> Phrases)> unmade;
    private readonly IReadOnlyList<(string Kind, List<Lesson> Lessons)> clauses;
    private readonly IReadOnlyList<IReadOnlyList<(string Kind, string Words)>> breaths;
    private readonly IReadOnlyList<TaughtPhrase> never;
    private HashSet<string> rulesKnow = [];
    private List<string> gaps = [];

    /// <summary>Prepares the lessons.</summary>
    /// <param name="files">The labelled phrases, hand by hand.</param>
    /// <param name="clauses">The clauses of our own.</param>
    /// <param name="breaths">Breaths of our own without marks.</param>
    /// <param name="never">Phrases of our own that tell no deed.</param>
    internal Teacher(IReadOnlyList<(string Hand, IReadOnlyList<Labelled> Phrases)> files, string clauses, string breaths, IEnumerable<string> never)
    {
        hands = [.. files.Select(file => (file.Hand, (IReadOnlyList<TaughtPhrase>)[.. file.Phrases.Select(phrase => new TaughtPhrase(phrase))]))];
        unmade = [.. files.Where(file => file.Hand is not Twisted).Select(file => (file.Hand, (IReadOnlyList<TaughtPhrase>)[.. file.Phrases.Where(phrase => phrase.Lines is [{ Kind: "adjustment" }]).Select(Unmade)]))];
        this.breaths = BreathFile.Read(breaths);
        this.clauses = [.. ClauseFile.Read(clauses), .. BreathFile.Lessons(this.breaths)];
        this.never = [.. never.Select(AsRuled)];
    }

    /// <summary>The weights that all hands but some make.</summary>
    /// <param name="unseen">Hands that the rules were not made with: from them it is learned whom to believe.</param>
    /// <param name="without">Hands that nothing is learned from.</param>
    internal IReadOnlyList<string> Teach(IReadOnlyList<string> unseen, params IReadOnlyList<string> without)
    {
        Place(without);
        rulesKnow = [.. hands.Select(hand => hand.Hand).Except(unseen)];
        List<(Sight, string)> balance = [];
        var kept = unseen.Where(hand => !without.Contains(hand)).ToList();
        for (var part = 0; part < Parts; part++)
        {
            var held = kept.Where((_, at) => at % Parts == part).ToList();
            var judge = Read(All(Lessons([.. without, .. held])));
            balance.AddRange(held.SelectMany(hand => Hand(hand)).SelectMany(phrase => phrase.Sights.Select((sight, at) => (Sight.Of(sight.Before, sight.Ruled, new Judge(judge)), phrase.Lessons[at].Kind))).Where(lesson => lesson.Kind.Length > 0));
        }

        return [.. All(Lessons(without)).Select(Thinned).OfType<string>(), .. gaps, .. BalanceLessons.Teach(balance, Weights.Unit)];
    }

    // The words beside a segment are many, and each counts for little: the file stays small without the least of them.
    private static string? Thinned(string line)
    {
        if (!(line.StartsWith("pw=", StringComparison.Ordinal) || line.StartsWith("nw=", StringComparison.Ordinal)))
        {
            return line;
        }

        var cells = line.Split('\t');
        List<string> kept = [cells[0], .. cells.Skip(1).Where(cell => cell.Split(':')[1] is not ("1" or "2" or "-1" or "-2"))];
        return kept.Count > 1 ? string.Join('\t', kept) : null;
    }

    internal IReadOnlyList<TaughtPhrase> Hand(string name) => hands.Single(hand => hand.Hand == name).Phrases;

    internal static Weights Read(IEnumerable<string> lines) => Weights.Read(new StringReader(string.Join('\n', lines)));

    /// <summary>The weights without a balance.</summary>
    internal IReadOnlyList<string> Judge(IReadOnlyList<string> without)
    {
        Place(without);
        return [.. All(Lessons(without)), .. gaps];
    }

    /// <summary>
    /// Lays labels on segments where the rules don’t say how, as a judge sees it that was taught with what is known by itself, and cut as it was
    /// learned where that is known; then goes through each phrase as it should have been read, and learns to cut from all of them.
    /// </summary>
    private void Place(IReadOnlyList<string> without)
    {
        var phrases = Phrases(without).ToList();
        var first = Read(All([.. phrases.Where(phrase => phrase.IsPlaced).SelectMany(phrase => phrase.Lessons).Concat(clauses.SelectMany(clause => clause.Lessons)).Select(lesson => lesson.Blind())], FewRounds));
        gaps = [.. GapLessons.Teach([.. phrases.Where(phrase => phrase.IsPlaced)], breaths, Weights.Unit)];
        var cutter = new Judge(Read(gaps));
        foreach (var phrase in phrases)
        {
            if (!phrase.IsPlaced)
            {
                phrase.Cut(cutter);
                Placing.Place(phrase, first);
            }

            phrase.Relive(new Judge(first));
        }

        gaps = [.. GapLessons.Teach(phrases, breaths, Weights.Unit)];

        foreach (var (kind, lessons) in clauses.Where(clause => clause.Lessons[0].Kind.Length == 0))
        {
            lessons.MaxBy(lesson => first.Ask(Questions.Kind, lesson.Seen).First(answer => answer.Answer == kind).Chance)!.Kind = kind;
        }
    }

    // A deed that is only planned, forbidden, asked or another’s is a remark.
    private static TaughtPhrase Unmade(Labelled deed, int at) => new(
        deed with { Phrase = Unmaking[at % Unmaking.Length] + char.ToLowerInvariant(deed.Phrase[0]) + deed.Phrase[1..], Lines = [new Line("note", new Dictionary<string, string>())] },
        Little);

    private IEnumerable<TaughtPhrase> Phrases(IReadOnlyList<string> without) => hands.Concat(unmade).Where(hand => !without.Contains(hand.Hand)).SelectMany(hand => hand.Phrases).Concat(never);

    // What the rules make of a phrase that they were made with says nothing.
    private List<Lesson> Lessons(IReadOnlyList<string> without) => [.. hands.Concat(unmade).Where(hand => !without.Contains(hand.Hand)).SelectMany(hand => hand.Phrases.SelectMany(phrase => phrase.Lessons).Select(lesson => rulesKnow.Contains(hand.Hand) ? lesson.Blind() : lesson))
        .Concat(never.SelectMany(phrase => phrase.Lessons).Select(lesson => lesson.Blind())).Concat(clauses.SelectMany(clause => clause.Lessons)).Where(lesson => lesson.Kind.Length > 0)];

    // What only sounds like a deed is none for the rules, and says what they make of it.
    private static TaughtPhrase AsRuled(string phrase) => new(new Labelled(0, [], phrase, [.. TaughtPhrase.ByRules(phrase, PhraseCorpus.Context([], TaughtPhrase.ByRules)).Entries.Select(PhraseCorpus.LineOf)]), Little);

    private static IEnumerable<string> All(List<Lesson> lessons, int rounds = Rounds) => Kinds(lessons, rounds).Concat(
        ((string[])[Questions.Finding, Questions.Adjustment, Questions.Test, Questions.Ended, Questions.RiskClosed, Questions.Verdict]).SelectMany(question => Logistic.Teach(
            question, [.. lessons.Where(lesson => lesson.Answer is not null && Questions.Of(lesson.Kind) == question).Select(lesson => (lesson.Matter, lesson.Answer!, 1.0))], Quick, rounds, Weights.Unit)));

    private static IEnumerable<string> Kinds(List<Lesson> lessons, int rounds = Rounds) =>
        Logistic.Teach(Questions.Kind, [.. lessons.Where(lesson => lesson.Kind.Length > 0).Select(lesson => (lesson.Seen, lesson.Kind, lesson.Weight))], Slow, rounds, Weights.Unit);
}
