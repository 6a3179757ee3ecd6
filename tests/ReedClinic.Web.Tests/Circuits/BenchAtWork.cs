using ReedClinic.Circuits;

namespace ReedClinic.Web.Tests.Circuits;

/// <summary>What a teacher does at the bench, over a circuit that a test drives.</summary>
internal static class BenchAtWork
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    /// <summary>Opens the page and waits until its form is up.</summary>
    public static async Task<Circuit> BenchAsync(this CookieClient teacher, string page, CircuitCounts? counts = null)
    {
        var circuit = await Circuit.OpenAsync(teacher, page, counts, Ct);
        await circuit.UntilAsync(c => c.Entry() is not null, Ct);
        return circuit;
    }

    /// <summary>Takes up a note and types it; nothing is sent yet.</summary>
    public static async Task TypeNoteAsync(this Circuit circuit, string words)
    {
        if (circuit.Field("Kind")?["value"] != "Note")
        {
            var pressed = await circuit.PressAsync("Note");
            Assert.True(pressed.Succeeded, pressed.Said);
            await circuit.UntilAsync(c => c.Field("Kind")?["value"] == "Note" && c.Field("Words") is not null, Ct);
        }

        var field = circuit.Field("Words")!;
        var (name, handler) = field.Handlers.First(on => on.Key is "onchange" or "oninput");
        var answer = await circuit.SendAsync(handler, name[2..], words, Ct);
        await circuit.UntilAsync(c => answer.IsCompleted || c.Field("Words") is { } typed && (typed["value"] == words), Ct);
        Assert.False(answer.IsCompleted, "What was typed was not taken, or was kept before its breath was over.");
    }

    /// <summary>Sends the form, and waits until the server is through with it.</summary>
    public static async Task<EventAnswer> SaveAsync(this Circuit circuit) => await await circuit.SendAsync(circuit.Save(), "submit", null, Ct);

    /// <summary>
    /// Presses the button with these words, and waits until the server is through with it. What the server drew anew
    /// meanwhile has other handlers: then the button as it is now is pressed.
    /// </summary>
    public static async Task<EventAnswer> PressAsync(this Circuit circuit, string button)
    {
        while (true)
        {
            var handler = circuit.Click(button);
            var answer = await await circuit.SendAsync(handler, "click", null, Ct);
            await circuit.SettleAsync(Ct);
            if (answer.Succeeded || handler == circuit.Click(button))
            {
                return answer;
            }
        }
    }

    /// <summary>The handler behind the form.</summary>
    public static ulong Save(this Circuit circuit) => circuit.Entry()!.Handlers["onsubmit"];

    private static ulong Click(this Circuit circuit, string button) =>
        circuit.Screen.Find("button", one => one.Text.Trim() == button)!.Handlers["onclick"];

    public static ScreenNode? Entry(this Circuit circuit) => circuit.Screen.Find("form", form => form["class"] == "entry");

    public static ScreenNode? Field(this Circuit circuit, string name) =>
        circuit.Entry()?.All.FirstOrDefault(node => node.Name is "input" or "textarea" or "select" && node["name"] == name);
}
