using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What goes on at the bench after a letter was sent.</summary>
public sealed class LetterAfterTests
{
    private static readonly Outcome<Undo> TakeBack = new Outcome<Undo>.Done(Undo.Entry());

    [Fact]
    public void What_was_said_said_better_or_taken_back_since_is_told_and_what_the_letter_tells_is_not()
    {
        var scene = new LetterScene(1);
        scene.Arrive(1);
        var opening = scene.Log(1, Domain.Bench.Test.Of(TestKind.Opening, 2));
        var seal = scene.Log(1, Domain.Bench.Test.Of(TestKind.Seal, 3));
        scene.Log(1, Note.Of("A dry day."), minute: 5);
        scene.Log(1, Verdict.Of(VerdictKind.Improved), minute: 10);
        var sentAt = scene.Batch.SubmittedAt.AddMinutes(20);
        Assert.Empty(After(scene, sentAt));
        var sent = LetterComposer.Compose(scene.Material);

        scene.Log(1, TakeBack, minute: 30, insteadOf: seal);
        scene.Log(1, Domain.Bench.Test.Of(TestKind.Opening, 3), minute: 31, insteadOf: opening);
        var soft = scene.Log(1, Domain.Bench.Test.Of(TestKind.SoftestStart, 3), minute: 32);
        var slip = scene.Log(1, Note.Of("A slip."), minute: 33);
        scene.Log(1, TakeBack, minute: 34, insteadOf: slip);

        Assert.Equal([opening, seal, soft], LetterAfter.Of(Log(scene), sentAt, sent).Select(fact => fact.Root));
        Assert.Equal([opening, soft], After(scene, sentAt));
        Assert.Equal([opening], LetterAfter.Of(Log(scene), sentAt, LetterComposer.Compose(scene.Material)).Select(fact => fact.Root));
    }

    private static IEnumerable<EntryId> After(LetterScene scene, DateTimeOffset sentAt) =>
        LetterAfter.Of(Log(scene), sentAt, LetterComposer.Compose(scene.Material) with { Blocks = [] }).Select(fact => fact.Root);

    private static BenchLog Log(LetterScene scene) => scene.Material.LogOf(scene.Reed(1).Id);
}
