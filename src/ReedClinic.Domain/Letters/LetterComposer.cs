using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Letters;

/// <summary>
/// Drafts a return letter from a batch, its bench logs and the common thread. It only puts into words what stands there;
/// whatever is missing is listed as a gap, not made up.
/// </summary>
public static class LetterComposer
{
    /// <summary>Drafts the letter.</summary>
    /// <param name="material">What it is composed from.</param>
    public static LetterDraft Compose(LetterMaterial material)
    {
        ArgumentNullException.ThrowIfNull(material);
        material = material.ToTheStudent();
        var batch = material.Batch;
        var phrasing = new Phrasing(batch.Id.Value);
        var reeds = Reeds(material);
        return new LetterDraft(
            batch.Id,
            batch.Code.ToString(),
            material.StudentName,
            material.Signature,
            batch.Scrape,
            reeds,
            TradeWords.Explain(Turned(Blocks(material, phrasing), material), reeds, TypedWords.In(material), TypedWords.OfTheStudent(material), phrasing))
        {
            Studio = material.Studio,
            Instrument = batch.Instrument,
            LessonKind = material.Thread.LessonKind,
            LessonWords = material.Thread.LessonKind is null ? material.Thread.LessonWords : null,
            LessonMarks = LetterPictures.LessonMarks(material),
            Turns = material.Turns,
        };
    }

    /// <summary>What a letter says, by its places and in order: the same in whatever words.</summary>
    /// <param name="material">What it is composed from.</param>
    /// <param name="asked">How often other words were asked for.</param>
    internal static IReadOnlyList<string> Statements(LetterMaterial material, int asked)
    {
        var phrasing = new Phrasing(material.Batch.Id.Value, asked);
        Blocks(material, phrasing);
        return phrasing.Statements;
    }

    private static List<LetterBlock> Blocks(LetterMaterial material, Phrasing phrasing)
    {
        var told = new LetterSoFar(OpeningBlocks.Told(material)) { Own = material.Own };
        LetterBlock?[] blocks =
        [
            OpeningBlocks.Greeting(material, phrasing),
            OpeningBlocks.DoneWell(material, phrasing),
            OpeningBlocks.Arrival(material, phrasing),
            AnswerBlocks.General(material, phrasing, told),
            .. material.Batch.Reeds.Where(reed => reed.Presence != Presence.Missing)
                .SelectMany(reed => ReedBlocks(material, reed, phrasing, told)),
            LessonBlocks.Lesson(material, phrasing, told),
            LessonBlocks.Habit(material, phrasing),
            LessonBlocks.CheckYourself(material, phrasing),
            LessonBlocks.Stroke(material, phrasing),
            LessonBlocks.Plan(material, phrasing),
            CareBlocks.Care(material, phrasing, told),
            CareBlocks.Cautions(material),
            CareBlocks.Closing(material, phrasing),
        ];
        return [.. blocks.OfType<LetterBlock>()];
    }

    // A part that was asked for in other words is taken from a letter that chooses otherwise; the rest stays as it is.
    private static List<LetterBlock> Turned(List<LetterBlock> blocks, LetterMaterial material)
    {
        foreach (var asked in material.Turns.GroupBy(part => part.Value, part => part.Key))
        {
            var others = Blocks(material, new Phrasing(material.Batch.Id.Value, asked.Key)).Where(block => asked.Contains(block.Key)).ToDictionary(block => block.Key);
            blocks = blocks.ConvertAll(block => others.GetValueOrDefault(block.Key, block));
        }

        return blocks;
    }

    private static List<LetterReed> Reeds(LetterMaterial material) =>
    [
        .. material.Batch.Reeds.Where(reed => reed.Presence != Presence.Missing)
            .Select(reed => new LetterReed(reed.Id, reed.Number, reed.HowToRecognise, LetterMarks.Of(material.LogOf(reed.Id)))
            {
                Crow = LetterPictures.Crow(material, reed),
            }),
    ];

    /// <summary>What is missing before the letter can go out.</summary>
    /// <param name="material">What it is composed from.</param>
    public static IReadOnlyList<LetterGap> Gaps(LetterMaterial material)
    {
        ArgumentNullException.ThrowIfNull(material);
        var told = material.ToTheStudent();
        var numbers = material.Batch.Reeds.ToDictionary(reed => reed.Id, reed => reed.Number);
        return
        [
            .. material.Batch.Questions.Where(question => question.Answer is null).Select(question =>
                new LetterGap(
                    LetterGap.KeyOf(question),
                    GapKind.UnansweredQuestion,
                    question.Reed is { } reed
                        ? $"About reed {Prose.Number(numbers[reed])}, {material.StudentName} asks: {question.Text}"
                        : $"{material.StudentName} asks: {question.Text}")
                {
                    Question = question.Id,
                    Reed = question.Reed,
                }),
            .. material.Batch.Reeds.Where(reed => reed.IsHere && material.LogOf(reed.Id).Verdict is null).Select(reed =>
                new LetterGap(
                    LetterGap.KeyOfVerdict(reed),
                    GapKind.ReedWithoutVerdict,
                    $"Reed {Prose.Number(reed.Number)} ({reed.HowToRecognise}) {(material.LogOf(reed.Id).IsParked ? "was put aside for now and has" : "has")} no verdict.")
                {
                    Reed = reed.Id,
                }),
            .. material.Batch.Reeds.SelectMany(reed => OpenRisks(reed, material)),
            .. material.Batch.Reeds
                .Where(reed => LetterWish.Beyond(reed, material.LogOf(reed.Id), material.Batch.CrowTarget).Count > 0)
                .Select(LetterWish.Gap),
            .. LetterLog.OfTheParcel(material.Batch, material.StudentName) is { } parcel ? [parcel] : Array.Empty<LetterGap>(),
            .. LeftOut(material),
            .. material.Batch.Reeds.Select(reed => LetterUntold.Gap(reed, told.LogOf(reed.Id))).OfType<LetterGap>(),
            .. material.Batch.Reeds.SelectMany(reed => new[] { LetterUntold.Unplayed(reed, material.LogOf(reed.Id)), LetterTried.Gap(reed, material.LogOf(reed.Id)), LetterNotTried.Gap(material, reed, material.LogOf(reed.Id)), PutAside.Gap(reed, material.LogOf(reed.Id)) }).OfType<LetterGap>(),
            .. Asked(material, told),
            .. material.Thread.HasLesson
                ? Array.Empty<LetterGap>()
                : [new LetterGap("common-lesson", GapKind.NoCommonLesson, "No common lesson was chosen for these reeds.")],
        ];
    }

    // What the log holds, and the letter doesn’t say.
    private static IEnumerable<LetterGap> LeftOut(LetterMaterial material) =>
    [
        .. material.Batch.Reeds.Select(reed => LetterLog.Gap(reed, material.LogOf(reed.Id), material.StudentName)).OfType<LetterGap>(),
        .. material.Batch.Reeds.Select(reed => LetterLog.OfBluntWords(reed, material.LogOf(reed.Id))).OfType<LetterGap>(),
        .. material.Batch.Reeds.Select(reed => LetterLog.OfShorthand(reed, material.LogOf(reed.Id))).OfType<LetterGap>(),
        .. material.Batch.Reeds.Select(reed => LetterLog.OfTakenBack(reed, material.Logs.GetValueOrDefault(reed.Id, BenchLog.Empty))).OfType<LetterGap>(),
        .. material.Batch.Reeds.Select(reed => NotePraised.Gap(reed, material.LogOf(reed.Id))).OfType<LetterGap>(),
    ];

    // What the letter says or leaves open, and the teacher may want to say better.
    private static IEnumerable<LetterGap> Asked(LetterMaterial material, LetterMaterial told) =>
    [
        .. material.Batch.Reeds.Select(reed => CrowDoubt.Gap(reed, material.LogOf(reed.Id), material.Batch.CrowTarget)).OfType<LetterGap>(),
        .. material.Batch.Reeds.Select(reed => GivenUp.Gap(told, reed)).OfType<LetterGap>(),
        .. KnifeAnswer.Gaps(material),
        .. AnswerShort.Gaps(told),
        .. SaidOfHarm.Gaps(material),
    ];

    private static IEnumerable<LetterGap> OpenRisks(Reed reed, LetterMaterial material) => material.LogOf(reed.Id).OpenRisks
        .Where(risk => risk.Closed is null)
        .Select(risk => new LetterGap(
            "risk-" + risk.Fact.Root.Value.ToString("N"),
            GapKind.OpenRisk,
            $"On reed {Prose.Number(reed.Number)} a risk was named and not closed: {risk.Fact.Now.Words}")
        {
            Reed = reed.Id,
        });

    private static IEnumerable<LetterBlock?> ReedBlocks(
        LetterMaterial material, Reed reed, Phrasing phrasing, LetterSoFar told)
    {
        var log = material.LogOf(reed.Id);
        yield return StoryBlock.Of(material, reed, log, phrasing, told);
        yield return NowBlock.Of(material, reed, log, phrasing, told);
        yield return AnswerBlocks.About(material, reed, phrasing, told);
        yield return UseBlock.Of(material, reed, log, phrasing, told);
    }

    /// <summary>The key of a block about one reed.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="part">Which part.</param>
    internal static string Key(Reed reed, string part) =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"reed-{reed.Number}-{part}");
}
