using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What a letter says can be followed and done by somebody who was not at the bench: in whichever words it is said.</summary>
public sealed class LetterStraightTests
{
    [Fact]
    public void A_mark_in_pencil_is_not_called_the_line_that_the_lamp_shows()
    {
        Assert.All(Letters(seed => Of(seed, "tip-not-separate", Zone.TipEdge)), letter =>
        {
            Assert.DoesNotMatch("(?i)draw the line|work along|the step", letter.Of("plan") + letter.Of("stroke"));
            Assert.Matches("a line in .*pencil on both blades where the tip is to begin", letter.Of("plan"));
            Assert.Matches("still wet", letter.Of("check"));
        });
    }

    [Fact]
    public void A_crow_too_low_ends_the_scraping_before_the_teacher_is_asked_to_cut() =>
        Assert.All(Letters(seed => Of(seed, "tip-corners-thick", Zone.TipCorners)), letter =>
        {
            Assert.Matches("(drops|sinks) (below|lower than) .*(knife down|no more).*ask your teacher to cut", letter.Of("plan"));
            Assert.DoesNotContain("yourself", letter.Of("plan"), StringComparison.Ordinal);
        });

    [Fact]
    public void The_same_in_another_place_is_not_said_of_what_was_told_in_between() => Assert.All(Letters(seed =>
    {
        var scene = Of(seed, "bumps", Zone.Windows);
        scene.Log(1, Finding.Of(new("tip-long"), FindingCharacter.Fault, new Place(Zone.TipEdge)));
        scene.Log(1, Finding.Of(new("bumps"), FindingCharacter.Fault, new Place(Zone.HeartCentre)));
        return scene;
    }), letter => Assert.Matches("(bump|ridge|hump|uneven|smooth)[^.]*\\. [^.]*middle of the heart|middle of the heart[^.]*(bump|ridge|hump|uneven|smooth)", letter.Of("reed-1-story")));

    [Fact]
    public void One_good_thing_alone_is_not_several_things() => Assert.All(Letters(seed =>
    {
        var scene = Of(seed, "tip-long", Zone.TipEdge);
        scene.Log(1, Finding.Of(new("spine-intact"), FindingCharacter.Strength, new Place(Zone.Spine)));
        return scene;
    }), letter => Assert.DoesNotMatch("(?i)things are", letter.Of("done-well")));

    [Fact]
    public void What_came_out_worse_without_work_is_not_said_to_be_lost() => Assert.All(Letters(seed =>
    {
        var scene = Of(seed, "tip-long", Zone.TipEdge);
        scene.Log(1, Test.Of(TestKind.LowResponse, 3));
        scene.Log(1, Test.Of(TestKind.LowResponse, 1));
        return scene;
    }), letter => Assert.Matches("did less well in the low notes", letter.Of("reed-1-now")));

    [Fact]
    public void A_good_reed_whose_low_notes_were_late_was_good_on_the_whole() => Assert.All(Letters(seed =>
    {
        var scene = Of(seed, "tip-long", Zone.TipEdge);
        scene.Log(1, Test.Of(TestKind.LowResponse, 1));
        scene.Log(1, Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge)));
        scene.Log(1, Verdict.Of(VerdictKind.GoodOnArrivalRefined));
        return scene;
    }), letter => Assert.Matches("(?i)on the whole|all in all|but for what", letter.Of("reed-1-story")));

    [Fact]
    public void Windows_are_told_to_be_where_the_back_is() => Assert.All(Letters(seed =>
    {
        var scene = Of(seed, "back-thick", Zone.Windows);
        scene.Log(1, Adjustment.Of(new("open-windows"), new Place(Zone.Windows)));
        return scene;
    }), letter =>
    {
        Assert.Matches("[Bb]ack[^.]*(towards|nearer to) the thread", letter.Of("reed-1-story"));
        Assert.Matches("windows[^.]*middle line, towards the thread", letter.Of("reed-1-story"));
    });

    [Fact]
    public void A_second_reed_that_can_not_be_saved_is_told_otherwise_than_the_first() => Assert.All(Letters(seed =>
    {
        var scene = new LetterScene(2, seed, form => form.Reeds[0].Permission = form.Reeds[1].Permission = "AdviseOnly");
        foreach (var number in (int[])[1, 2])
        {
            scene.Arrive(number);
            scene.Log(number, Finding.Of(new("worn"), FindingCharacter.Fault, new Place(Zone.WholeReed)));
            scene.Log(number, Verdict.Of(VerdictKind.NotToBeSaved));
        }

        return scene;
    }), letter => Assert.Matches("either|any more than|as well|, too", letter.Of("reed-2-story")));

    [Fact]
    public void A_fault_between_two_blades_is_on_neither() => Assert.All(Letters(seed => Of(seed, "blades-uneven", Zone.WholeReed, Blades.Upper)), letter =>
        Assert.DoesNotMatch(@"\(on the", letter.Of("reed-1-story")));

    [Fact]
    public void What_is_liked_and_what_is_good_is_said_in_whole_sentences() => Assert.All(Letters(seed =>
    {
        var scene = new LetterScene(1, seed, form => form.Reeds[0].Likes = "It is easy");
        scene.Arrive(1, new ReedArrival(Presence.Here, "pencil dot", WindingHand.Left, Overlap.UpperToTheLeft, true, "a scuff on the bark", Fitness.Fit));
        scene.Log(1, Test.Of(TestKind.Crow, 0));
        return scene;
    }), letter =>
    {
        Assert.DoesNotMatch("in it, you wrote|about it, you wrote|in one thing|would keep", letter.Of("reed-1-story"));
        Assert.DoesNotMatch("took it out|unpacked it", letter.Of("arrival"));
    });

    private static LetterScene Of(Guid seed, string fault, Zone zone, Blades blades = Blades.Both)
    {
        var scene = new LetterScene(1, seed) { Thread = new(new(fault), null, null) };
        scene.Arrive(1, new ReedArrival(Presence.Here, "pencil dot", WindingHand.Left, Overlap.UpperToTheLeft, true, null, Fitness.Fit));
        scene.Log(1, Finding.Of(new(fault), FindingCharacter.Fault, new Place(zone, blades)));
        return scene;
    }

    private static List<Letter> Letters(Func<Guid, LetterScene> make) =>
        [.. Enumerable.Range(1, 24).Select(seed => new Letter(LetterComposer.Compose(make(new Guid(seed, 0, 0, [1, 2, 3, 4, 5, 6, 7, 8])).Material)))];

    private sealed record Letter(LetterDraft Draft)
    {
        public string Of(string key) => Draft.Blocks.SingleOrDefault(block => block.Key == key)?.Text ?? "";
    }
}
