//! `view!`: markup as it is read in the page, in one step of expansion however long it is.

/// Markup as a [`Node`](super::Node).
///
/// Elements with `name=value`, `prop:name=value`, `on:event=handler`, `bind:value=signal`
/// and `node_ref=reference`; what stands between tags stands in braces. A value
/// is a literal, a name, or an expression in braces. A drawing stands whole in one `view!`.
macro_rules! view {
    (
        $( { $($first:tt)* } )*
        $(
            < $( / $end:ident )?
            $(
                $tag:ident
                $( $name:ident $( - $more:ident )* $( : $what:ident )? $( = $value:tt )? )*
                $( / $( $void:lifetime )? )?
            )? >
            $( { $($child:tt)* } )*
        )*
    ) => {{
        const _: () = assert!(
            $crate::ui::view::plan::is_whole(&[
                $(
                    $( concat!("/", stringify!($end)), )?
                    $( stringify!($tag), $( "/", $( stringify!($void), )? )? )?
                )*
            ]),
            "a tag closes what it did not open, or nothing closes it",
        );
        const PLAN: &str = concat!(
            $( $crate::ui::view::plan_of!({ $($first)* }), )*
            $(
                $( $crate::ui::view::plan_of!(/ $end), )?
                $(
                    "\u{1}", stringify!($tag),
                    $( $crate::ui::view::plan_of!(
                        $name $( - $more )* $( : $what )? $( = $value )?
                    ), )*
                    $( "\u{2}", $( stringify!($void), )? )?
                )?
                $( $crate::ui::view::plan_of!({ $($child)* }), )*
            )*
        );
        #[allow(unused_mut)]
        let mut view = $crate::ui::view::View::new(PLAN);
        $( view.child($($first)*); )*
        $(
            $( $( $crate::ui::view::slot_of!(
                view, $name $( - $more )* $( : $what )? $( = $value )?
            ); )* )?
            $( view.child($($child)*); )*
        )*
        view.done()
    }};
}

/// The part of a plan that is one attribute, one end of an element or one hole.
macro_rules! plan_of {
    ({ $($child:tt)* }) => { "\u{6}" };
    (/ $end:ident) => { "\u{2}" };
    (on : $event:ident = $value:tt) => { concat!("\u{3}", stringify!($event), "\u{5}") };
    (prop : $name:ident = $value:tt) => { concat!("\u{3}", stringify!($name), "\u{5}") };
    (bind : value = $value:tt) => { "\u{3}value\u{5}\u{3}input\u{5}" };
    (node_ref = $value:tt) => { "\u{5}" };
    ($name:ident $( - $more:ident )* = $value:literal) => {
        concat!("\u{3}", stringify!($name) $( , "-", stringify!($more) )*, "\u{4}", $value)
    };
    ($name:ident $( - $more:ident )* = $value:tt) => {
        concat!("\u{3}", stringify!($name) $( , "-", stringify!($more) )*, "\u{5}")
    };
    ($name:ident $( - $more:ident )*) => {
        concat!("\u{3}", stringify!($name) $( , "-", stringify!($more) )*, "\u{4}")
    };
}

/// Puts the value of one attribute into the hole that its plan has for it.
macro_rules! slot_of {
    ($view:ident, on : $event:ident = { $($value:tt)* }) => {
        $crate::ui::view::on::$event(&mut $view, $($value)*)
    };
    ($view:ident, on : $event:ident = $value:tt) => {
        $crate::ui::view::on::$event(&mut $view, $value)
    };
    ($view:ident, prop : $name:ident = { $($value:tt)* }) => { $view.property($($value)*) };
    ($view:ident, prop : $name:ident = $value:tt) => { $view.property($value) };
    ($view:ident, bind : value = $value:tt) => { $view.bind($value) };
    ($view:ident, node_ref = $value:tt) => { $view.reference($value) };
    ($view:ident, $name:ident $( - $more:ident )* = $value:literal) => {};
    ($view:ident, $name:ident $( - $more:ident )* = { $($value:tt)* }) => {
        $view.attribute($($value)*)
    };
    ($view:ident, $name:ident $( - $more:ident )* = $value:tt) => { $view.attribute($value) };
    ($view:ident, $name:ident $( - $more:ident )*) => {};
}

pub(crate) use {plan_of, slot_of, view};
