using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>A memo by one key, with a microphone that beeps: W3C MediaStream Recording, and what becomes of it.</summary>
public sealed class MemoTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    [Theory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task One_key_begins_a_memo_and_ends_it_and_it_plays_beside_its_pass(int width)
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, $"memo-{width}", width);
        await teacher.AllowAsync("microphone");
        var before = await OpenAsync(teacher, 1);

        await teacher.Page.Keyboard.PressAsync("m");
        await SaidForAsync(teacher, 1);
        await Assertions.Expect(State(teacher)).ToContainTextAsync("It stays with the studio");
        await teacher.LookAsync("recording");
        await teacher.Page.Keyboard.PressAsync("m");

        await Assertions.Expect(State(teacher)).ToContainTextAsync("The memo is kept");
        await Assertions.Expect(teacher.Page.Locator(".pass .memos > li")).ToHaveCountAsync(before + 1);
        var memo = teacher.Page.Locator(".pass .memos > li").Last;
        await Assertions.Expect(memo).ToContainTextAsync("for the studio alone");
        Assert.True(await PlaysAsync(memo) > 0.2);
        await teacher.FitsAsync();
        await teacher.LookAsync("kept");

        // It goes with the letter, and doesn't, and is gone: on this page, without another.
        await memo.GetByRole(AriaRole.Button, new() { Name = "Put it into the letter" }).ClickAsync();
        await Assertions.Expect(memo).ToContainTextAsync("goes with the letter");
        await memo.GetByRole(AriaRole.Button, new() { Name = "Take it out of the letter" }).ClickAsync();
        await Assertions.Expect(memo).ToContainTextAsync("for the studio alone");
        await memo.Locator("summary").ClickAsync();
        await memo.GetByRole(AriaRole.Button, new() { Name = "Remove it for good" }).ClickAsync();
        await Assertions.Expect(teacher.Page.Locator(".memos > li")).ToHaveCountAsync(before);
    }

    [Fact]
    public async Task A_memo_stops_by_itself_when_its_time_is_over_and_is_kept()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "memo-full");
        await teacher.AllowAsync("microphone");
        var before = await OpenAsync(teacher, 2);
        await Memo(teacher).EvaluateAsync("memo => (memo.dataset.most = 1)");

        await teacher.Page.Keyboard.PressAsync("m");

        await Assertions.Expect(State(teacher)).ToContainTextAsync("The memo is kept");
        await Assertions.Expect(State(teacher)).ToContainTextAsync("stopped by itself");
        await Assertions.Expect(Key(teacher)).ToHaveAttributeAsync("aria-pressed", "false");
        await Assertions.Expect(teacher.Page.Locator(".memos > li")).ToHaveCountAsync(before + 1);
    }

    [Fact]
    public async Task What_cannot_be_sent_waits_on_the_device_outlives_the_page_and_arrives_once()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "memo-waits");
        await teacher.AllowAsync("microphone");
        var before = await OpenAsync(teacher, 3);
        await teacher.Page.RouteAsync("**/recordings", route => route.AbortAsync());
        await teacher.Page.Keyboard.PressAsync("m");
        await SaidForAsync(teacher, 1);
        await teacher.Page.Keyboard.PressAsync("m");
        await Assertions.Expect(State(teacher)).ToContainTextAsync("The memo stays on this device");
        await teacher.ShotAsync("waiting");

        // Another page comes: what was said before is sent from there, and the same goes for one that was cut off by it.
        await teacher.Page.ReloadAsync();
        await ReadyAsync(teacher);
        await teacher.Page.Keyboard.PressAsync("m");
        await SaidForAsync(teacher, 2);
        teacher.Page.Dialog += (_, asks) => _ = asks.AcceptAsync();
        await teacher.Page.UnrouteAsync("**/recordings");
        await teacher.Page.ReloadAsync();
        await ReadyAsync(teacher);

        await Assertions.Expect(teacher.Page.Locator(".memos > li")).ToHaveCountAsync(before + 2);
        Assert.True(await PlaysAsync(teacher.Page.Locator(".memos > li").Last) > 0.2);
        await teacher.Page.WaitForFunctionAsync(Waiting);
    }

    [Fact]
    public async Task A_microphone_that_cannot_be_had_is_told_in_plain_words()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "memo-refused");
        await OpenAsync(teacher, 1);
        foreach (var (name, words) in new[]
        {
            ("NotAllowedError", "may not use the microphone"), ("NotFoundError", "No microphone was found"), ("NotReadableError", "Another program may be using it"),
        })
        {
            await teacher.Page.EvaluateAsync("name => { navigator.mediaDevices.getUserMedia = async () => { throw new DOMException('', name); }; }", name);

            await teacher.Page.Keyboard.PressAsync("m");

            await Assertions.Expect(State(teacher)).ToContainTextAsync(words);
            await Assertions.Expect(Key(teacher)).ToHaveAttributeAsync("aria-pressed", "false");
            await teacher.LookAsync(name);
        }
    }

    [Fact]
    public async Task What_was_said_until_the_microphone_was_pulled_out_is_kept()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "memo-unplugged");
        await teacher.AllowAsync("microphone");
        await teacher.Page.AddInitScriptAsync(
            "const ask = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices); navigator.mediaDevices.getUserMedia = async (what) => (window.heard = await ask(what));");
        var before = await OpenAsync(teacher, 2);
        await teacher.Page.Keyboard.PressAsync("m");
        await SaidForAsync(teacher, 1);

        await teacher.Page.EvaluateAsync("window.heard.getAudioTracks()[0].dispatchEvent(new Event('ended'))");

        await Assertions.Expect(State(teacher)).ToContainTextAsync("The microphone is gone. What was said until then is kept.");
        await Assertions.Expect(teacher.Page.Locator(".memos > li")).ToHaveCountAsync(before + 1);
    }

    // True once this device has nothing left to send.
    private const string Waiting =
        "() => new Promise((done) => { const asked = indexedDB.open('reedclinic-memos'); asked.onsuccess = () => { " +
        "const all = asked.result.transaction('takes').objectStore('takes').count(); all.onsuccess = () => { asked.result.close(); done(all.result === 0); }; }; })";

    private static ILocator Memo(Visitor teacher) => teacher.Page.Locator("[data-memo]");

    private static ILocator Key(Visitor teacher) => Memo(teacher).Locator("button.key");

    private static ILocator State(Visitor teacher) => Memo(teacher).Locator("[data-state]");

    // So long or longer: a second is soon over.
    private static async Task SaidForAsync(Visitor teacher, int seconds) => await teacher.Page.WaitForFunctionAsync(
        "seconds => { const said = /(\\d+):(\\d+) of/.exec(document.querySelector('[data-memo] [data-time]').textContent); return said && 60 * said[1] + Number(said[2]) >= seconds; }", seconds);

    private static Task<double> PlaysAsync(ILocator memo) => memo.Locator("audio").EvaluateAsync<double>(
        "audio => new Promise((done, fail) => { audio.onerror = () => fail(audio.error.message); audio.ontimeupdate = () => audio.currentTime > 0.2 && done(audio.currentTime); audio.play().catch(fail); })");

    private static Task ReadyAsync(Visitor teacher) => teacher.Page.Locator("html[data-bench-ready][data-memo-ready]").WaitForAsync();

    // How many memos the reed has already.
    private async Task<int> OpenAsync(Visitor teacher, int reed)
    {
        await teacher.GoToAsync(await app.BenchOfAsync("Tomas Arden", reed, TestContext.Current.CancellationToken));
        await teacher.LiveAsync();
        await ReadyAsync(teacher);
        return await teacher.Page.Locator(".memos > li").CountAsync();
    }
}
