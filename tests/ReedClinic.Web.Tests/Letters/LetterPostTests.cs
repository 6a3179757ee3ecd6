using ReedClinic.Domain.Letters;
using ReedClinic.Web.Features.Letters;

namespace ReedClinic.Web.Tests.Letters;

public sealed class LetterPostTests
{
    [Fact]
    public void Only_what_was_changed_is_kept_so_the_rest_goes_on_following_the_log()
    {
        var post = new LetterPost(new Dictionary<string, string>
        {
            [LetterPost.BlockField("greeting")] = "Dear Ines,\r\n\r\nThank you.",
            [LetterPost.ShownField("greeting")] = LetterPost.MarkOf("Dear Ines,\n\nThank you."),
            [LetterPost.BlockField("closing")] = "Warm wishes",
            [LetterPost.ShownField("closing")] = LetterPost.MarkOf("Kind regards"),
        });

        Assert.Equal(["closing"], post.Texts.Keys);
    }

    [Theory]
    [InlineData("Kind regards", "Other words", "lesson")]
    [InlineData("Other words", "Other words", "closing")]
    [InlineData("Kind regards", "Mind the corners", "closing")]
    public void What_is_told_of_a_clash_stands_beside_the_part_that_both_changed(string closing, string lesson, string told)
    {
        var post = new LetterPost(new Dictionary<string, string>
        {
            [LetterPost.BlockField("closing")] = "Warm wishes",
            [LetterPost.ShownField("closing")] = LetterPost.MarkOf("Kind regards"),
            [LetterPost.BlockField("lesson")] = "Finish the corners",
            [LetterPost.ShownField("lesson")] = LetterPost.MarkOf("Mind the corners"),
        });

        Assert.Equal(told, post.FirstClashIn([Part("closing", closing), Part("lesson", lesson)]));
    }

    private static LetterBlock Part(string key, string text) => new(key, BlockKind.Closing, [new LetterParagraph([new LetterSentence(text, [])])]);
}
