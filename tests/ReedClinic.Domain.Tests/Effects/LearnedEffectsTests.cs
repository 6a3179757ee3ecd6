using CsCheck;
using MathNet.Numerics.Distributions;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Diagnosis.Proposals;
using ReedClinic.Domain.Effects;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Tests.Bench;
using ReedClinic.Domain.Tests.Recurrence;
using WorkDone = ReedClinic.Domain.Effects.WorkDone;

namespace ReedClinic.Domain.Tests.Effects;

public sealed class LearnedEffectsTests
{
    private static readonly AdjustmentKindId Corners = new("thin-corners"), Blend = new("blend"), Windows = new("open-windows"), Hair = new("clip-hair");
    private static readonly AdjustmentKindId[] Kinds = [Corners, Blend, Windows, Hair];
    private static readonly Catalogue Shipped = Catalogue.Shipped;

    /// <summary>
    /// Logs are drawn from what is thought before: effects from their priors, students and teachers who differ by nothing to half of a prior’s spread, long-tailed scatter, one to
    /// three adjustments a pass. Of the 90 % intervals as many have to hold the truth. Seeded; more logs with REEDCLINIC_SIMULATIONS.
    /// </summary>
    [Fact]
    public void Of_the_intervals_nine_in_ten_hold_what_was_true()
    {
        var random = new Random(1908);
        var (anybody, one) = (new List<bool>(), new List<bool>());
        for (var log = 0; log < Drawn.Rounds(400); log++)
        {
            var truth = new Truth(random);
            var moves = truth.Moves(random, passes: 5);
            var general = CrowEffects.Learn(moves, Shipped, null).ToDictionary(effect => effect.Kind);
            anybody.AddRange(Kinds.Select(kind => Holds(general[kind], truth.Usual[kind])));
            if (log % 4 == 0)
            {
                var special = CrowEffects.Learn(moves, Shipped, new Whose(Student(1))).ToDictionary(effect => effect.Kind);
                one.AddRange(Kinds.Select(kind => Holds(special[kind], truth.Usual[kind] + truth.OfStudent[(1, kind)])));
            }
        }

        Drawn.Print($"{anybody.Count} intervals for anybody: {Share(anybody):0.000} hold; {one.Count} for one student: {Share(one):0.000}");
        Assert.InRange(Share(anybody), 0.86, 0.94);
        Assert.InRange(Share(one), 0.85, 0.95);
    }

    [Fact]
    public void Two_adjustments_that_always_come_together_are_told_apart_by_the_passes_in_which_they_do_not()
    {
        var random = new Random(1909);
        List<CrowMoved> moves =
        [
            .. Enumerable.Range(0, 30).Select(_ => Move(1, (-25 + Scatter(random), [Corners, Hair]))),
            .. Enumerable.Range(0, 15).Select(_ => Move(1, (-40 + Scatter(random), [Corners]))),
        ];
        var learned = LearnedEffects.Learn(new PassReading(moves, []), Shipped).Crow;

        Assert.InRange(learned[Corners].Middle, -42, -25);
        Assert.InRange(learned[Hair].Middle, 8, 20);
        Assert.Equal((45, 30), (learned[Corners].Passes, learned[Hair].Passes));
        Assert.InRange(learned[Corners].Sharper, 0, 0.05);
    }

    [Fact]
    public void One_students_reeds_are_drawn_towards_the_others_and_not_thrown_in_with_them()
    {
        var random = new Random(1910);
        List<CrowMoved> moves =
        [
            .. Enumerable.Range(0, 8).SelectMany(student => Enumerable.Range(0, 6).Select(_ => Move(student + 2, (-10 + Scatter(random), [Blend])))),
            .. Enumerable.Range(0, 3).Select(_ => Move(1, (-40 + Scatter(random), [Blend]))),
        ];
        double For(int? student) => LearnedEffects.Learn(
            new PassReading(moves, []), Shipped, new Whose(student is { } number ? Student(number) : null)).Crow[Blend].Middle;

        Assert.InRange(For(1), -38, For(2) - 2);
        Assert.InRange(For(2), -14, -7);
    }

    [Fact]
    public void With_nothing_measured_the_usual_teaching_stands_and_says_so()
    {
        var learned = LearnedEffects.Learn(PassReading.Empty, Shipped);

        Assert.Equal(Shipped.Adjustments.Count, learned.Crow.Count);
        Assert.Equal(Shipped.Adjustments.Count * 6, learned.Words.Count);
        Assert.All(learned.Crow.Values, effect =>
        {
            Assert.Equal(0, effect.Passes);
            Assert.True(effect.IsTooLittle);
            Assert.Equal(effect.Before.Middle, effect.Middle, 6);
            Assert.Equal(effect.Before.Middle + (1.6448536 * effect.Before.Spread), effect.High, 4);
        });
        Assert.Equal(
            "Nobody has measured here yet what it does to the crow to thin the tip corners: only what is usually taught is known.", learned.Crow[Corners].Sentence);
    }

    [Fact]
    public void What_is_known_is_told_in_a_plain_sentence_with_its_count()
    {
        var random = new Random(1911);
        string Said(int passes, double cents) => LearnedEffects.Learn(
            new PassReading([.. Enumerable.Range(0, passes).Select(at => Move(at % 4, (cents + (Scatter(random) / 4), [Blend])))], []), Shipped).Crow[Blend].Sentence;

        Assert.Equal("To blend heart into tip was measured once here: too little to say more than is usually taught.", Said(1, -20));
        Assert.Equal("To blend heart into tip was measured only four times here: too little to say more than is usually taught.", Said(4, -20));
        Assert.Matches("^To blend heart into tip was measured 40 times here: the crow went about [12][0-9] cents lower, and most likely between [0-9]+ and [0-9]+ cents?\\.$", Said(40, -25));
        Assert.Matches("^To blend heart into tip was measured eight times here: the crow may go either way, from [0-9]+ cents? lower to [0-9]+ cents? higher\\.$", Said(8, 0));
    }

    [Fact]
    public void What_was_measured_often_enough_is_given_on_to_proposals_and_nothing_else()
    {
        var moves = Enumerable.Range(0, 6).Select(at => Move(at, (-30, [Blend]))).Append(Move(1, (12, [Hair])));
        var learned = LearnedEffects.Learn(new PassReading([.. moves], []), Shipped);
        var given = learned.ForProposals();
        var (blend, hair) = (given.Of(Shipped.Find(Blend)!, EffectScale.Pitch), given.Of(Shipped.Find(Hair)!, EffectScale.Pitch));

        Assert.Equal(6, blend.Passes);
        Assert.Equal(learned.Crow[Blend].Middle, blend.Likely * EffectEstimate.CentsAStep, 9);
        Assert.Equal(AdjustmentEffects.Usual.Of(Shipped.Find(Hair)!, EffectScale.Pitch), hair);
        Assert.Null(given.Of(Shipped.Find(Blend)!, EffectScale.Effort).Passes);
    }

    [Fact]
    public void One_student_one_teacher_one_pass_or_a_kind_nobody_knows_gives_numbers_all_the_same()
    {
        var effect = LearnedEffects.Learn(new PassReading([Move(1, (-1200, [AdjustmentKindId.SomethingElse, Blend]))], []), Shipped, new Whose(Student(1), Writer.Ada)).Crow;

        Assert.Equal("something else", effect[AdjustmentKindId.SomethingElse].Name);
        Assert.All(effect.Values, one => Assert.True(double.IsFinite(one.Middle) && one.Low < one.Middle && one.Middle < one.High && one.Sharper is >= 0 and <= 1));
    }

    [Fact]
    public void Whatever_was_measured_every_number_is_one() =>
        Gen.Select(Gen.Int[1, 3], Gen.Double[-600, 600], Gen.Int[0, 3].Array[1, 3]).Array[0, 20].Sample(
            moves =>
            {
                var learned = LearnedEffects.Learn(
                    new PassReading(
                        [.. moves.Select(move => Move(move.Item1, (move.Item2, [.. move.Item3.Select(at => Kinds[at])])))],
                        [.. moves.Select(move => new WordMoved(Work(move.Item1, [.. move.Item3.Select(at => Kinds[at])]), EffectScale.Effort, Math.Sign(Math.Round(move.Item2 / 300))))]),
                    Shipped);
                Assert.All(learned.Crow.Values, one => Assert.True(double.IsFinite(one.Middle) && one.Low < one.High));
                Assert.All(learned.Words.Values, one => Assert.True(
                    double.IsFinite(one.Middle) && one.Low < one.High && one.Up > 0 && one.Down > 0 && one.Same > 0 && Math.Abs(one.Up + one.Same + one.Down - 1) < 1e-9));
            },
            iter: 30);

    /// <summary>McCullagh (1980), equation for proportional odds: a lean of 0.5 with thresholds at −1 and 1 gives 1/(1 + e^0.5) up and 1/(1 + e^1.5) down.</summary>
    [Fact]
    public void Outcomes_in_the_shares_of_the_published_model_give_its_lean_back()
    {
        var (up, down) = ((int)Math.Round(20000 / (1 + Math.Exp(0.5))), (int)Math.Round(20000 / (1 + Math.Exp(1.5))));
        int[] ways = [.. Enumerable.Repeat(1, up), .. Enumerable.Repeat(-1, down), .. Enumerable.Repeat(0, 20000 - up - down)];
        var model = WordLeans.Fit([.. ways.Select(_ => (double[])[1])], ways, [new EffectPrior(0, 1000, EvidenceMark.OwnDefault)], 1);

        Assert.Equal(0.5, model.Middle[0], 3);
    }

    [Fact]
    public void Words_that_mostly_go_down_lean_down_by_their_order_and_are_told_with_their_count()
    {
        List<WordMoved> moves = [.. Enumerable.Range(0, 20).Select(at => new WordMoved(Work(at % 3, [Corners]), EffectScale.Effort, at % 5 == 0 ? 0 : -1))];
        var lean = LearnedEffects.Learn(new PassReading([], moves), Shipped).Words[(Corners, EffectScale.Effort)];

        Assert.Equal(20, lean.Passes);
        Assert.InRange(lean.Down, 0.6, 0.9);
        Assert.InRange(lean.High, -5, 0);
        Assert.InRange(lean.Up, 0, 0.1);
    }

    private static double Share(List<bool> all) => all.Count(one => one) / (double)all.Count;

    private static bool Holds(LearnedEffect effect, double truth) => truth >= effect.Low && truth <= effect.High;

    private static double Scatter(Random random) => StudentT.Sample(random, 0, 8, 4);

    private static StudentId Student(int number) => new(Writer.Number(71, number));

    private static WorkDone Work(int student, AdjustmentKindId[] kinds) => new(
        Student(student), student % 2 == 0 ? Writer.Ada : Writer.Ben, kinds.GroupBy(kind => kind).ToDictionary(group => group.Key, group => (double)group.Count()));

    private static CrowMoved Move(int student, (double Cents, AdjustmentKindId[] Kinds) done) => new(Work(student, done.Kinds), new Cents(done.Cents));

    /// <summary>What is true in a studio that was drawn at random.</summary>
    private sealed class Truth
    {
        private const int Students = 6;

        public Truth(Random random)
        {
            var (students, teachers) = (0.5 * random.NextDouble(), 0.5 * random.NextDouble());
            foreach (var kind in Kinds)
            {
                var prior = EffectPriors.Cents(Shipped, kind);
                Usual[kind] = Normal.Sample(random, prior.Middle, prior.Spread);
                foreach (var student in Enumerable.Range(0, Students))
                {
                    OfStudent[(student, kind)] = Normal.Sample(random, 0, students * prior.Spread);
                }

                foreach (var teacher in Enumerable.Range(0, 2))
                {
                    OfTeacher[(teacher, kind)] = Normal.Sample(random, 0, teachers * prior.Spread);
                }
            }
        }

        public Dictionary<AdjustmentKindId, double> Usual { get; } = [];

        public Dictionary<(int, AdjustmentKindId), double> OfStudent { get; } = [];

        private Dictionary<(int, AdjustmentKindId), double> OfTeacher { get; } = [];

        public List<CrowMoved> Moves(Random random, int passes) =>
        [
            .. from student in Enumerable.Range(0, Students)
               from _ in Enumerable.Range(0, passes)
               let kinds = Kinds.OrderBy(_ => random.Next()).Take(random.Next(1, 4)).ToArray()
               let teacher = random.Next(2)
               let sum = kinds.Sum(kind => Usual[kind] + OfStudent[(student, kind)] + OfTeacher[(teacher, kind)])
               select new CrowMoved(
                   Work(student, kinds) with { Teacher = teacher == 0 ? Writer.Ada : Writer.Ben }, new Cents(sum + StudentT.Sample(random, 0, 12, 4))),
        ];
    }
}
