using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.People;

namespace ReedClinic.Domain.Effects;

/// <summary>For whose reed, and at whose hand, effects are asked.</summary>
/// <param name="Student">Whose reed; null for any student’s.</param>
/// <param name="Teacher">Who works; null for any teacher.</param>
public sealed record Whose(StudentId? Student = null, AccountId? Teacher = null);

/// <summary>
/// What each adjustment does to the crow, from all adjustments of a pass together. Students and teachers may differ: each has own
/// deviations that are drawn towards nothing, as far as they are alike.
/// </summary>
internal sealed class CrowEffects
{
    // How much students and teachers differ, as a part of each prior’s spread. Each pair is a model, weighed by its evidence.
    private static readonly double[] Differences = [0.05, 0.2, 0.5];

    // Crows are read to a few cents and cane does as it likes: long tails, and some twelve cents of scatter. Our own defaults.
    private const double Tails = 4;
    private const double ExpectedScatter = 12;
    private const double ScatterWorth = 3;

    private readonly IReadOnlyList<CrowMoved> moves;
    private readonly List<AdjustmentKindId> kinds;
    private readonly List<EffectPrior> priors;
    private readonly Whose whose;
    private readonly Dictionary<(AccountId Teacher, AdjustmentKindId Kind), int> ofTeachers = [];
    private readonly Dictionary<AdjustmentKindId, int> ofTheStudent = [];
    private readonly List<(StudentId Student, List<AdjustmentKindId> Kinds)> others;
    private readonly List<int> columns;

    private CrowEffects(IReadOnlyList<CrowMoved> moves, Catalogue catalogue, Whose whose)
    {
        (this.moves, this.whose) = (moves, whose);
        kinds = [.. moves.SelectMany(move => move.Work.Done.Keys).Distinct().OrderBy(kind => kind.Value, StringComparer.Ordinal)];
        priors = [.. kinds.Select(kind => EffectPriors.Cents(catalogue, kind))];
        columns = [.. Enumerable.Range(0, kinds.Count)];
        foreach (var pair in moves.SelectMany(move => move.Work.Done.Keys.Select(kind => (move.Work.Teacher, kind))).Distinct())
        {
            ofTeachers[pair] = columns.Count;
            columns.Add(kinds.IndexOf(pair.kind));
        }

        foreach (var kind in moves.Where(move => move.Work.Student == whose.Student).SelectMany(move => move.Work.Done.Keys).Distinct())
        {
            ofTheStudent[kind] = columns.Count;
            columns.Add(kinds.IndexOf(kind));
        }

        others =
        [
            .. moves.Where(move => move.Work.Student != whose.Student).GroupBy(move => move.Work.Student)
                .Select(group => (group.Key, group.SelectMany(move => move.Work.Done.Keys).Distinct().ToList())),
        ];
    }

    /// <summary>Learns the effect of every adjustment in use; those that were never measured have what is usually taught.</summary>
    public static IEnumerable<LearnedEffect> Learn(IReadOnlyList<CrowMoved> moves, Catalogue catalogue, Whose? whose)
    {
        var learned = moves.Count == 0 ? [] : new CrowEffects(moves, catalogue, whose ?? new Whose()).Run(catalogue);
        return
        [
            .. learned,
            .. catalogue.Adjustments.Where(entry => learned.TrueForAll(effect => effect.Kind != entry.Id)).Select(entry => Unmeasured(entry, catalogue)),
        ];
    }

    private static LearnedEffect Unmeasured(AdjustmentEntry entry, Catalogue catalogue)
    {
        var prior = EffectPriors.Cents(catalogue, entry.Id);
        return Effect(entry.Id, entry.Name, 0, 0, new Mixture([(0, prior.Middle, prior.Spread, double.PositiveInfinity)]), prior);
    }

    private static LearnedEffect Effect(AdjustmentKindId kind, string name, int passes, int students, Mixture after, EffectPrior before) => new(
        kind,
        name,
        passes,
        students,
        after.Middle,
        after.Quantile((1 - LearnedEffect.Confidence) / 2),
        after.Quantile((1 + LearnedEffect.Confidence) / 2),
        1 - after.Below(0),
        before);

    private List<LearnedEffect> Run(Catalogue catalogue)
    {
        List<RegressionRow> rows = [.. moves.Select(Row)];
        List<(double, double, RegressionFit Fit)> models =
        [
            .. from students in Differences from teachers in Differences select (students, teachers, PooledRegression.Fit(rows, Prior(students, teachers))),
        ];
        return
        [
            .. kinds.Select((kind, at) =>
            {
                List<int> sum = [.. Columns(kind, at)];
                var with = moves.Where(move => move.Work.Done.ContainsKey(kind)).ToList();
                return Effect(
                    kind,
                    catalogue.Find(kind)?.Name ?? AdjustmentCatalogue.NameOf(kind),
                    with.Count,
                    with.Select(move => move.Work.Student).Distinct().Count(),
                    new Mixture([.. models.Select(model => (
                        model.Fit.LogEvidence,
                        sum.Sum(column => model.Fit.Middle[column]),
                        Math.Sqrt(sum.Sum(one => sum.Sum(other => model.Fit.Spread[one][other]))),
                        model.Fit.Freedom))]),
                    priors[at]);
            }),
        ];
    }

    private IEnumerable<int> Columns(AdjustmentKindId kind, int at)
    {
        yield return at;
        if (whose.Teacher is { } teacher && ofTeachers.TryGetValue((teacher, kind), out var ofTeacher))
        {
            yield return ofTeacher;
        }

        if (ofTheStudent.TryGetValue(kind, out var ofStudent))
        {
            yield return ofStudent;
        }
    }

    private RegressionRow Row(CrowMoved move)
    {
        var common = new double[columns.Count];
        var group = others.FindIndex(other => other.Student == move.Work.Student);
        var own = new double[group < 0 ? 0 : others[group].Kinds.Count];
        foreach (var (kind, much) in move.Work.Done)
        {
            common[kinds.IndexOf(kind)] = much;
            common[ofTeachers[(move.Work.Teacher, kind)]] = much;
            if (group < 0)
            {
                common[ofTheStudent[kind]] = much;
            }
            else
            {
                own[others[group].Kinds.IndexOf(kind)] = much;
            }
        }

        return new RegressionRow(common, group, own, move.Moved.Value);
    }

    private RegressionPrior Prior(double students, double teachers)
    {
        double Precision(int kind, double part) => 1 / (priors[kind].Spread * part * priors[kind].Spread * part);
        return new RegressionPrior(
            [.. columns.Select((kind, at) => at < kinds.Count ? priors[kind].Middle : 0)],
            [
                .. columns.Select((kind, at) => Precision(
                    kind, at < kinds.Count ? 1 : at < kinds.Count + ofTeachers.Count ? teachers : students)),
            ],
            [.. others.Select(other => other.Kinds.Select(kind => Precision(kinds.IndexOf(kind), students)).ToArray())],
            Tails,
            ExpectedScatter,
            ScatterWorth);
    }
}
