using ReedClinic.Domain.Bench.Phrases.Judging;

namespace ReedClinic.Domain.Tests.Bench.Phrases.Teaching;

/// <summary>Teaches the judge with labelled phrases and clauses.</summary>
internal sealed class Teacher
{
    private const double Slow = 0.03;
    private const double Quick = 0.05;
    private const double Little = 0.2;

    private readonly IReadOnlyList<(string Hand, IReadOnlyList<TaughtPhrase> Phrases)> hands;
    private readonly string clauses;
    private readonly IReadOnlyList<TaughtPhrase> never;

    /// <summary>Prepares the lessons.</summary>
    /// <param name="files">The labelled phrases, hand by hand.</param>
    /// <param name="clauses">The clauses of our own.</param>
    /// <param name="never">Phrases of our own that tell no deed.</param>
    internal Teacher(IEnumerable<(string Hand, IReadOnlyList<Labelled> Phrases)> files, string clauses, IEnumerable<string> never)
    {
        hands = [.. files.Select(file => (file.Hand, (IReadOnlyList<TaughtPhrase>)[.. file.Phrases.Select(phrase => new TaughtPhrase(phrase))]))];
        this.clauses = clauses;
        this.never = [.. never.Select(AsRuled)];
    }

    /// <summary>The weights that all hands but some make.</summary>
    /// <param name="unseen">Hands that the rules were not made with: from them it is learned whom to believe.</param>
    /// <param name="without">Hands that nothing is learned from.</param>
    internal IReadOnlyList<string> Teach(IReadOnlyList<string> unseen, params IReadOnlyList<string> without)
    {
        List<(Sight, string)> balance = [];
        foreach (var hand in unseen.Where(hand => !without.Contains(hand)))
        {
            var judge = Read(Judge([.. without, hand]));
            foreach (var phrase in Hand(hand))
            {
                Settle(phrase, judge);
                balance.AddRange(phrase.Sights.Select((sight, at) => (sight with { Opinion = new Opinion(judge, sight.Before) }, phrase.Lessons[at].Kind)));
            }
        }

        return [.. Judge(without), .. BalanceLessons.Teach(balance, Weights.Unit)];
    }

    internal IReadOnlyList<TaughtPhrase> Hand(string name) => hands.Single(hand => hand.Hand == name).Phrases;

    internal static Weights Read(IEnumerable<string> lines) => Weights.Read(new StringReader(string.Join('\n', lines)));

    /// <summary>Lays the labels on the segments, where the rules don’t say how.</summary>
    internal static void Settle(TaughtPhrase phrase, Weights weights)
    {
        if (!phrase.IsPlaced)
        {
            Placing.Place(phrase, weights);
        }
    }

    /// <summary>The weights without a balance. They are taught twice: first with what is known by itself.</summary>
    internal IReadOnlyList<string> Judge(IReadOnlyList<string> without)
    {
        var phrases = hands.Where(hand => !without.Contains(hand.Hand)).SelectMany(hand => hand.Phrases).ToList();
        var ours = ClauseFile.Read(clauses);
        phrases.AddRange(never);
        var first = Read(All([.. phrases.Where(phrase => phrase.IsPlaced).SelectMany(phrase => phrase.Lessons), .. ours.SelectMany(clause => clause.Lessons)]));
        foreach (var phrase in phrases)
        {
            Settle(phrase, first);
        }

        foreach (var (kind, lessons) in ours.Where(clause => clause.Lessons[0].Kind.Length == 0))
        {
            lessons.MaxBy(lesson => first.Ask(Questions.Kind, lesson.Seen).First(answer => answer.Answer == kind).Chance)!.Kind = kind;
        }

        return [.. All([.. phrases.SelectMany(phrase => phrase.Lessons), .. ours.SelectMany(clause => clause.Lessons)])];
    }

    // What only sounds like a deed is none for the rules, and says what they make of it.
    private static TaughtPhrase AsRuled(string phrase) => new(new Labelled(0, [], phrase, [.. TaughtPhrase.ByRules(phrase, PhraseCorpus.Context([], TaughtPhrase.ByRules)).Entries.Select(PhraseCorpus.LineOf)]), Little);

    private static IEnumerable<string> All(List<Lesson> lessons)
    {
        List<Lesson> known = [.. lessons.Where(lesson => lesson.Kind.Length > 0)];
        var kinds = Logistic.Teach(Questions.Kind, [.. known.Select(lesson => (lesson.Seen, lesson.Kind, lesson.Weight))], Slow, Weights.Unit);
        return kinds.Concat(((string[])[Questions.Finding, Questions.Adjustment, Questions.Test, Questions.Ended, Questions.RiskClosed, Questions.Verdict])
            .SelectMany(question => Logistic.Teach(
                question, [.. known.Where(lesson => lesson.Answer is not null && Questions.Of(lesson.Kind) == question).Select(lesson => (lesson.Matter, lesson.Answer!, 1.0))], Quick, Weights.Unit)));
    }
}
