using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters.Wordings;

namespace ReedClinic.Domain.Letters;

/// <summary>What a student wrote of body, illness or dirt: the letter says the usual caution beside that reed, and the teacher is told before it goes.</summary>
internal static class SaidOfHarm
{
    /// <summary>What a reed’s words call for, whatever the bench found; nothing twice where mould was found anyway.</summary>
    /// <param name="material">What the letter is composed from.</param>
    /// <param name="reed">The reed.</param>
    internal static IReadOnlyList<Caution> Of(LetterMaterial material, Reed reed) =>
        [.. Cautions.In(Texts(material, reed)).Where(caution => caution != Caution.Knife && !(caution == Caution.Dirt && reed.Fitness == Fitness.Mould))];

    /// <summary>What questions about all reeds call for, and words about reeds that have no part of their own.</summary>
    /// <param name="material">What the letter is composed from.</param>
    internal static IReadOnlyList<Caution> OfAll(LetterMaterial material) => [.. Cautions.In(Texts(material)).Where(caution => caution != Caution.Knife)];

    /// <summary>The cautions as they stand in the letter.</summary>
    /// <param name="cautions">Which.</param>
    /// <param name="material">What the letter is composed from.</param>
    /// <param name="ofAll">Whether they are about all reeds.</param>
    internal static IEnumerable<LetterParagraph> Said(IEnumerable<Caution> cautions, LetterMaterial material, bool ofAll) =>
        cautions.Select(caution => LetterParagraph.Plain(CautionWordings.Said(caution, material.Age, ofAll)));

    /// <summary>The notices that tell the teacher.</summary>
    /// <param name="material">What the letter is composed from.</param>
    internal static IEnumerable<LetterGap> Gaps(LetterMaterial material) =>
    [
        .. material.Batch.Reeds.Where(reed => reed.Presence != Presence.Missing && Of(material, reed).Count > 0).Select(reed => Gap(
            "harm-" + Prose.Number(reed.Number), $"Of reed {Prose.Number(reed.Number)}", "the part about this reed", Texts(material, reed), material) with
        {
            Reed = reed.Id,
            Part = LetterComposer.Key(reed, "use"),
        }),
        .. OfAll(material).Count == 0 ? Array.Empty<LetterGap>() : [Gap("harm", "Beside the reeds", "what was asked", Texts(material), material) with { Part = "answers" }],
    ];

    private static LetterGap Gap(string key, string of, string where, IEnumerable<string?> texts, LetterMaterial material) => new(
        key,
        GapKind.SaidOfHarm,
        $"{of}, {material.StudentName} wrote: {string.Join(' ', texts.OfType<string>().Where(text => Cautions.In(text).Any(caution => caution != Caution.Knife)).Distinct().Select(Prose.Quote))} "
        + $"The letter says the usual caution with {where}: not to play, and whom to ask. Read it there, and say more if you know more.")
    {
        IsToldOnly = true,
    };

    private static IEnumerable<string?> Texts(LetterMaterial material, Reed reed) =>
        [reed.Bothers, reed.LastTried, reed.Likes, .. material.Batch.Questions.Where(question => question.Reed == reed.Id).Select(question => question.Text)];

    private static IEnumerable<string?> Texts(LetterMaterial material) =>
    [
        .. material.Batch.Questions.Where(question => question.Reed is null).Select(question => question.Text),
        .. material.Batch.Reeds.Where(reed => reed.Presence == Presence.Missing).SelectMany(reed => Texts(material, reed)),
    ];
}
