using Bunit;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Letters;
using ReedClinic.Domain.Intake;
using ReedClinic.Web.Features.Letters;
using ReedClinic.Web.Mailing;

namespace ReedClinic.Web.Tests.Letters;

/// <summary>What the letter's page says of the mail about it is what became of it.</summary>
public sealed class LetterMailNoteTests : BunitContext
{
    private IReadOnlyList<string> _buttons = [];
    private string _hint = "";

    [Theory]
    [InlineData(MailWay.Folder, "folder", "nobody gets it", "have a mail server named")]
    [InlineData(MailWay.Folder, "server", "and nobody got it", "By now mail goes out")]
    [InlineData(MailWay.Folder, "nowhere", "and nobody got it", "No mail goes out at present")]
    [InlineData(MailWay.Posted, "folder", "went out on", null)]
    [InlineData(MailWay.Posted, "server", "went out on", null)]
    [InlineData(null, "folder", "wasn’t kept", "send it once more")]
    [InlineData(null, "server", "wasn’t kept", "send it once more")]
    public void How_the_mail_went_is_told_and_not_where_mail_goes_today(MailWay? way, string today, string words, string? advice)
    {
        var said = Said(today, new LetterMail(LetterMailState.Sent, DateTimeOffset.UnixEpoch, null, way));

        Assert.Contains(words, said, StringComparison.Ordinal);
        Assert.Contains(advice ?? "", said, StringComparison.Ordinal);
        Assert.Equal(way == MailWay.Folder, said.Contains("written to a folder of the studio’s machine", StringComparison.Ordinal));
        Assert.Equal(way == MailWay.Posted, said.Contains("went out", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("server", null, "The mail about it waits to go.")]
    [InlineData("server", "The mail server took too long.", "The mail about it will be tried again. The mail server took too long.")]
    [InlineData("nowhere", null, "waits, because no mail goes out at present. Tell them yourself")]
    [InlineData("nowhere", "The mail server took too long.", "waits, because no mail goes out at present. Tell them yourself")]
    public void A_mail_that_waits_where_none_goes_out_is_not_promised(string today, string? problem, string words) =>
        Assert.Contains(words, Said(today, new LetterMail(LetterMailState.Waiting, null, problem)), StringComparison.Ordinal);

    [Theory]
    [InlineData("server", 1, "was tried once and didn’t go out; it is tried again on 1 January 1970, ", true)]
    [InlineData("server", 3, "was tried 3 times and didn’t go out; it is tried again on 1 January 1970, ", true)]
    [InlineData("nowhere", 3, "waits, because no mail goes out at present.", false)]
    public void A_mail_that_did_not_go_out_says_how_often_it_was_tried_and_when_next_and_can_be_tried_now(string today, int tries, string words, bool canBeTried)
    {
        var said = Said(today, new LetterMail(LetterMailState.Waiting, null, "The mail server took too long.") { Tries = tries, Next = DateTimeOffset.UnixEpoch.AddHours(12) });

        Assert.Contains(words, said, StringComparison.Ordinal);
        Assert.Equal(canBeTried, said.EndsWith("The mail server took too long.", StringComparison.Ordinal));
        Assert.Equal(canBeTried ? ["Try the mail now"] : [], _buttons);
    }

    [Theory]
    [InlineData("server", "The mail server took too long.", "“Try the mail now” sends it to the new one; left alone it is tried at the former one.")]
    [InlineData("server", null, "tell them yourself")]
    [InlineData("nowhere", "The mail server took too long.", "tell them yourself")]
    public void Of_a_mail_under_a_former_address_it_is_told_where_it_will_go(string today, string? problem, string words)
    {
        var former = new LetterMail(LetterMailState.Waiting, null, problem) { Tries = 2, Next = DateTimeOffset.UnixEpoch, IsForFormerAddress = true };
        Said(today, former);

        Assert.Contains(words, _hint, StringComparison.Ordinal);
    }

    private string Said(string today, LetterMail mail)
    {
        Services.AddLocalization();
        Services.AddSingleton(TimeProvider.System).AddSingleton<AntiforgeryStateProvider, NoTokens>();
        Services.AddSingleton(new MailPost(
            new MailSettings { Folder = today == "folder" ? "/mail" : null, Host = today == "server" ? "mail.example.org" : null }, new Nowhere()));

        var note = Render<LetterMailNote>(p => p.Add(one => one.Code, default(BatchCode)).Add(one => one.Mail, mail));
        _buttons = [.. note.FindAll("button").Select(button => button.TextContent)];
        _hint = string.Join(' ', note.FindAll(".hint").Select(hint => hint.TextContent));
        return note.Find("[role=status]").TextContent;
    }

    private sealed class NoTokens : AntiforgeryStateProvider
    {
        public override AntiforgeryRequestToken? GetAntiforgeryToken() => null;
    }

    private sealed class Nowhere : IServer
    {
        public IFeatureCollection Features { get; } = new FeatureCollection();

        public void Dispose()
        {
        }

        public Task StartAsync<TContext>(Microsoft.AspNetCore.Hosting.Server.IHttpApplication<TContext> application, CancellationToken cancellationToken)
            where TContext : notnull => Task.CompletedTask;

        public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
    }
}
