using Microsoft.Playwright;

namespace ReedClinic.Browser.Tests.Running;

/// <summary>Getting about by keys alone.</summary>
public static class Keys
{
    private const int Patience = 250;

    /// <summary>Presses Tab until the focus stands where it is wanted, and can be seen there.</summary>
    public static async Task TabToAsync(this Visitor visitor, ILocator wanted)
    {
        await wanted.WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Attached });
        for (var press = 0; press < Patience; press++)
        {
            if (await wanted.EvaluateAsync<bool>("element => element === document.activeElement"))
            {
                Assert.True(await wanted.EvaluateAsync<bool>("element => element.matches(':focus-visible')"));
                return;
            }

            await visitor.Page.Keyboard.PressAsync("Tab");
        }

        Assert.Fail($"{Patience} presses of Tab did not reach it.");
    }

    public static async Task PressKeyAsync(this Visitor visitor, string key, string thenAt)
    {
        await visitor.Page.Keyboard.PressAsync(key);
        await visitor.ArriveAsync(thenAt);
    }
}
