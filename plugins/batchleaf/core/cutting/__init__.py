"""Planning the cutting: what sheets can give by through cuts, with proof."""
