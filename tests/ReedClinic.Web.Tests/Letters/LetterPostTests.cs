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
}
